package dev.isoline.dicom.upper;

import java.io.IOException;

/** Ends something whose failure to end changes nothing. */
final class Quietly {

    interface Ending {
        void run() throws IOException;
    }

    private Quietly() {}

    static void run(Ending ending) {
        try {
            ending.run();
        } catch (IOException gone) {
            // it has ended all the same
        }
    }
}
