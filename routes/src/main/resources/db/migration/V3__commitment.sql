-- Requests for storage commitment (PS3.4 J.3), written before they are sent; a transaction UID is never used twice.
CREATE TABLE commitment (
    transaction_uid TEXT   NOT NULL PRIMARY KEY,
    destination     TEXT   NOT NULL,
    order_id        TEXT   NOT NULL,
    requested_at    BIGINT NOT NULL,
    reported_at     BIGINT
);
CREATE INDEX commitment_lane ON commitment (order_id, destination);

-- What each asked for: the delivery that stored an object, and the object's SOP instance.
CREATE TABLE commitment_object (
    transaction_uid TEXT      NOT NULL,
    sop_instance    TEXT      NOT NULL,
    sop_class       TEXT      NOT NULL,
    delivery        ${number} NOT NULL,
    PRIMARY KEY (transaction_uid, sop_instance)
);
