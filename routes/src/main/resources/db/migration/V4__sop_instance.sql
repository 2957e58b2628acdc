-- SOP Instance UID of a recording that came as a DICOM object: the same object is known whatever the transfer syntax it comes in.
ALTER TABLE recording ADD COLUMN sop_instance TEXT;
CREATE UNIQUE INDEX recording_sop_instance ON recording (sop_instance);
