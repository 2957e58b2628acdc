package dev.isoline.dicom.dimse;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.spi.Matches;
import dev.isoline.dicom.spi.SopReference;
import dev.isoline.dicom.spi.Status;
import java.io.IOException;

/** C-FIND as SCU, PS3.7 9.1.2. */
final class FindScu {

    private static final int MEDIUM = 0;

    private final Conversation conversation;

    FindScu(Conversation conversation) {
        this.conversation = conversation;
    }

    Status find(int context, String sopClass, DataSet keys, Matches matches) throws IOException {
        Messages messages = conversation.messages();
        CommandSet request =
                CommandSet.request(Field.C_FIND, conversation.nextId())
                        .affected(new SopReference(sopClass, ""))
                        .us(CommandTag.Priority, MEDIUM);
        messages.send(context, request.withDataSet(), keys);
        boolean wanted = true;
        while (true) {
            Message response = conversation.response(request);
            Status status = response.command().status();
            if (!status.isPending()) {
                return status;
            }
            if (wanted && !matches.match(match(messages, response), status)) {
                wanted = false;
                messages.send(context, CommandSet.cancel(request.messageId()));
            }
        }
    }

    private static DataSet match(Messages messages, Message response) throws IOException {
        return InMemory.read(messages.dataSet(), messages.syntax(response.contextId()));
    }
}
