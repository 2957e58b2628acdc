package dev.isoline.gateway;

import java.util.regex.Pattern;

/** What the messages of these tests tell of patients, orders and insurance. */
final class Secrets {

    private static final Pattern VALUES =
            Pattern.compile(
                    "Quillfeather|Ottoline|19590713|1959-07-13|13-JUL-1959|Marrow|QMR|QPL|QPOL"
                            + "|Berg|Anna|19610412|1961-04-12|Springfield|Main St|W123456789");

    private Secrets() {}

    static boolean areIn(String text) {
        return VALUES.matcher(text).find();
    }
}
