package dev.isoline.dicom.dimse;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DataSetWriter;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.Uid;
import dev.isoline.dicom.spi.SopReference;
import dev.isoline.dicom.spi.Status;
import dev.isoline.dicom.upper.PDataOutput;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.WritableByteChannel;

/**
 * C-STORE as SCU, PS3.7 9.1.1: streamed. Where the peer answers before all is sent, it has failed
 * and the rest is not sent: the last fragment is then set early, 9.1.1.2.
 */
final class StoreScu {

    private static final int MEDIUM = 0;

    private final Conversation conversation;
    private final Messages messages;
    private final boolean watchful;

    /**
     * @param watchful look for an early answer
     */
    StoreScu(Conversation conversation, boolean watchful) {
        this.conversation = conversation;
        this.messages = conversation.messages();
        this.watchful = watchful;
    }

    static SopReference instance(DataSet object) throws DicomException {
        return new SopReference(uid(object, Tag.SOPClassUID), uid(object, Tag.SOPInstanceUID));
    }

    private static String uid(DataSet object, int tag) throws DicomException {
        String uid = object.text(tag).orElse("");
        if (!Uid.isValid(uid)) {
            throw new DicomException(tag, "is not a UID");
        }
        return uid;
    }

    Status store(int context, StoredFile file) throws IOException {
        if (!file.isIn(messages.context(context))) {
            return store(context, file.instance(), file.dataSet());
        }
        FileChannel encoded = file.encoded();
        CommandSet request = request(file.instance());
        PDataOutput out = messages.sendWithData(context, request);
        while (!answered() && out.readFrom(encoded) >= 0) {
            // the file goes into fragments until it ends
        }
        out.close();
        return conversation.response(request).command().status();
    }

    Status store(int context, SopReference instance, DataSet object) throws IOException {
        CommandSet request = request(instance);
        PDataOutput out = messages.sendWithData(context, request);
        try {
            var target = new UntilAnswered(out);
            new DataSetWriter(target, messages.syntax(context)).write(object);
        } catch (AnsweredEarly e) {
            // what it is comes below
        }
        out.close();
        return conversation.response(request).command().status();
    }

    private CommandSet request(SopReference instance) {
        return CommandSet.request(Field.C_STORE, conversation.nextId())
                .affected(instance)
                .us(CommandTag.Priority, MEDIUM);
    }

    private boolean answered() throws IOException {
        return watchful && messages.answered();
    }

    private static final class AnsweredEarly extends IOException {

        private static final long serialVersionUID = 1;
    }

    private final class UntilAnswered implements WritableByteChannel {

        private final PDataOutput out;

        UntilAnswered(PDataOutput out) {
            this.out = out;
        }

        @Override
        public int write(ByteBuffer source) throws IOException {
            if (answered()) {
                throw new AnsweredEarly();
            }
            return out.write(source);
        }

        @Override
        public boolean isOpen() {
            return out.isOpen();
        }

        @Override
        public void close() throws IOException {
            out.close();
        }
    }
}
