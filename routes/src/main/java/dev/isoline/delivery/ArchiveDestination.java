package dev.isoline.delivery;

import dev.isoline.dicom.spi.Abort;
import dev.isoline.dicom.spi.ContextNotAccepted;
import dev.isoline.dicom.spi.Rejection;
import dev.isoline.dicom.spi.Status;
import dev.isoline.ledger.DeliveryTable.NewDelivery;
import java.io.IOException;
import java.nio.file.Path;

/** Stores objects by C-STORE (PS3.4 annex B), one association an object. */
final class ArchiveDestination implements Destination {

    private static final int PARALLEL = 2;

    /** One call of an archive. */
    @FunctionalInterface
    interface Call {
        Status answer() throws IOException;
    }

    private final ArchiveLine line;
    private final boolean commitment;
    private final Path dataDir;

    /**
     * @param commitment whether an object is delivered only when the archive has committed itself
     */
    ArchiveDestination(ArchiveLine line, boolean commitment, Path dataDir) {
        this.line = line;
        this.commitment = commitment;
        this.dataDir = dataDir;
    }

    @Override
    public int parallel() {
        return PARALLEL;
    }

    @Override
    public Verdict send(NewDelivery delivery) throws IOException, InterruptedException {
        Verdict verdict =
                ObjectFile.send(
                        delivery,
                        dataDir,
                        object -> judge(() -> line.store(object.path(), object.sopClass())));
        return commitment && verdict.outcome() == Verdict.Outcome.DELIVERED
                ? Verdict.stored(verdict.text())
                : verdict;
    }

    /**
     * The status the archive answers, or why it did not (PS3.8 9.3.4): one that rejects us may be
     * set right as well as one that is busy, so both are tried again; a SOP class it does not take
     * is refused.
     */
    static Verdict judge(Call call) throws IOException {
        try {
            return StoreStatus.judge(call.answer().code());
        } catch (Rejection | Abort e) {
            return Verdict.retry(e.getMessage());
        } catch (ContextNotAccepted e) {
            return Verdict.refused(e.getMessage());
        }
    }
}
