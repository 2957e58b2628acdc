package dev.isoline.ledger;

/** The tables within one unit of work. */
public final class Tables {

    private final Session session;

    Tables(Session session) {
        this.session = session;
    }

    public MessageTable messages() {
        return new MessageTable(session);
    }

    public ResourceTable resources() {
        return new ResourceTable(session);
    }

    public OrderTable orders() {
        return new OrderTable(session);
    }

    public TimelineTable timeline() {
        return new TimelineTable(session);
    }

    public RecordingTable recordings() {
        return new RecordingTable(session);
    }

    public DeliveryTable deliveries() {
        return new DeliveryTable(session);
    }

    public WorklistTable worklist() {
        return new WorklistTable(session);
    }

    public CommitmentTable commitments() {
        return new CommitmentTable(session);
    }

    public AuditTable audit() {
        return new AuditTable(session);
    }
}
