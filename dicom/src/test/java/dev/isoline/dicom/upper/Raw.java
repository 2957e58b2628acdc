package dev.isoline.dicom.upper;

import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.util.HexFormat;

/** A peer that sends bytes and looks at bytes. */
final class Raw implements Closeable {

    private final Socket socket;

    Raw(Socket socket) throws IOException {
        this.socket = socket;
        socket.setSoTimeout(8000);
    }

    static Raw to(int port) throws IOException {
        return new Raw(new Socket(InetAddress.getLoopbackAddress(), port));
    }

    Raw send(String hex) throws IOException {
        return send(HexFormat.of().parseHex(hex.replace(" ", "")));
    }

    Raw send(byte[] bytes) throws IOException {
        socket.getOutputStream().write(bytes);
        return this;
    }

    /** The next PDU in hex. */
    String pdu() throws IOException {
        var in = socket.getInputStream();
        byte[] header = in.readNBytes(6);
        if (header.length < 6) {
            return "closed";
        }
        int length = java.nio.ByteBuffer.wrap(header).getInt(2);
        var bytes = new ByteArrayOutputStream();
        bytes.writeBytes(header);
        bytes.writeBytes(in.readNBytes(length));
        return HexFormat.of().formatHex(bytes.toByteArray());
    }

    void shutdownOutput() throws IOException {
        socket.shutdownOutput();
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}
