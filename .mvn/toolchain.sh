# Sourced by isoline and verify: finds JDK 17 or newer and Maven, installs them where it may.

java_major() { # path of a java; the file beside it says what starting it would say much later
    release=$(dirname -- "$(dirname -- "$(readlink -f -- "$1")")")/release
    if [ -r "$release" ]; then
        sed -n 's/^JAVA_VERSION="\([0-9]*\).*/\1/p' "$release"
    else
        "$1" -version 2>&1 | sed -n 's/.* version "\([0-9]*\).*/\1/p' | head -n 1
    fi
}

find_java() {
    java=${JAVA_HOME:+$JAVA_HOME/bin/java}
    if [ -z "$java" ] || [ ! -x "$java" ]; then
        java=$(command -v java || true)
    fi
    if [ -z "$java" ] || [ "$(java_major "$java")" -lt 17 ] 2>/dev/null; then
        return 1
    fi
}

may_install() {
    [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null
}

install_packages() { # Debian packages
    echo "isoline: installing $*" >&2
    apt-get update -qq >/dev/null && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq "$@" >/dev/null
}

need_java_and_maven() {
    missing=
    if ! find_java || ! command -v javac >/dev/null; then
        missing="openjdk-17-jdk-headless"
    fi
    if ! command -v mvn >/dev/null; then
        missing="$missing maven"
    fi
    if [ -z "$missing" ]; then
        return
    fi
    # shellcheck disable=SC2086 # a list of words
    if ! may_install || ! install_packages $missing; then
        echo "isoline: please install JDK 17 or newer and Maven (on Debian or Ubuntu, as root: apt-get install $missing)" >&2
        exit 3
    fi
    find_java
}
