package dev.isoline.dicom.upper;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.StandardSocketOptions;
import java.net.UnknownHostException;
import java.nio.ByteBuffer;
import java.nio.channels.SocketChannel;
import java.util.Optional;

/** TCP; direct buffers go to the kernel as they are. */
final class PlainTransport implements Transport {

    private final SocketChannel channel;
    private final Optional<InetSocketAddress> target;

    private PlainTransport(SocketChannel channel, Optional<InetSocketAddress> target) {
        this.channel = channel;
        this.target = target;
    }

    /** To a peer, not yet connected. */
    static PlainTransport to(String host, int port) throws IOException {
        var target = new InetSocketAddress(host, port);
        if (target.isUnresolved()) {
            throw new UnknownHostException(host);
        }
        return new PlainTransport(SocketChannel.open(), Optional.of(target));
    }

    /** From a peer. */
    static PlainTransport from(SocketChannel accepted) {
        return new PlainTransport(accepted, Optional.empty());
    }

    SocketChannel channel() {
        return channel;
    }

    @Override
    public void open() throws IOException {
        if (target.isPresent()) {
            channel.connect(target.get());
        }
        channel.setOption(StandardSocketOptions.TCP_NODELAY, true);
    }

    @Override
    public int read(ByteBuffer bytes) throws IOException {
        return channel.read(bytes);
    }

    @Override
    public int read(ByteBuffer bytes, int millis) throws IOException {
        channel.socket().setSoTimeout(millis);
        byte[] some = new byte[Math.min(bytes.remaining(), 1024)];
        int count = channel.socket().getInputStream().read(some);
        bytes.put(some, 0, Math.max(count, 0));
        return count;
    }

    @Override
    public void write(ByteBuffer bytes) throws IOException {
        channel.write(bytes);
    }

    @Override
    public boolean readable() throws IOException {
        return channel.socket().getInputStream().available() > 0;
    }

    @Override
    public InetAddress address() {
        return target.map(InetSocketAddress::getAddress)
                .orElseGet(() -> channel.socket().getInetAddress());
    }

    @Override
    public Optional<String> certificate() {
        return Optional.empty();
    }

    @Override
    public void shutdownInput() {
        Quietly.run(channel::shutdownInput);
    }

    @Override
    public void close() {
        abandon();
    }

    @Override
    public void abandon() {
        Quietly.run(channel::close);
    }
}
