-- The modality worklist: one row per order offered to the recorder stations. Rows are few, they go when the recording comes.
-- start is local date and time as the number yyyymmddhhmmss; name is the patient's, folded for matching.
CREATE TABLE worklist (
    id         ${identity},
    order_id   TEXT     NOT NULL,
    start      BIGINT   NOT NULL,
    name       TEXT     ${exact} NOT NULL,
    patient_id TEXT     NOT NULL,
    accession  TEXT     NOT NULL,
    station    TEXT     NOT NULL,
    item       ${bytes} NOT NULL
);
CREATE UNIQUE INDEX worklist_order ON worklist (order_id);
CREATE INDEX worklist_start ON worklist (start, id);
CREATE INDEX worklist_name ON worklist (name, id);
CREATE INDEX worklist_patient ON worklist (patient_id, id);
CREATE INDEX worklist_accession ON worklist (accession, id);
