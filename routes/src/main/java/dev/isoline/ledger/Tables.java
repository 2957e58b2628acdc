package dev.isoline.ledger;

/** The tables within one unit of work. */
public interface Tables {

    MessageTable messages();

    ResourceTable resources();

    OrderTable orders();

    TimelineTable timeline();

    RecordingTable recordings();

    DeliveryTable deliveries();

    AuditTable audit();
}
