-- The ledger. One text for SQLite and PostgreSQL, but for the placeholders, which hold what the two write differently.
-- Instants are microseconds since 1970-01-01T00:00:00Z. Described in docs/ledger.md.

-- Every message as its bytes came, and the answer it got.
CREATE TABLE message (
    id          ${identity},
    channel     TEXT     NOT NULL,
    sender      TEXT     NOT NULL,
    control_id  TEXT     NOT NULL,
    type        TEXT     NOT NULL,
    sha256      TEXT     NOT NULL,
    raw         ${bytes} NOT NULL,
    received_at BIGINT   NOT NULL,
    answer      ${bytes},
    outcome     TEXT     NOT NULL DEFAULT '',
    accepted    SMALLINT NOT NULL DEFAULT 0
);
CREATE UNIQUE INDEX message_accepted ON message (channel, sender, control_id) WHERE accepted = 1 AND control_id <> '';

-- FHIR resources as they are now; those of one unit of work lie side by side.
CREATE TABLE resource (
    num     ${identity},
    type    TEXT    NOT NULL,
    id      TEXT    NOT NULL,
    version INTEGER NOT NULL,
    updated BIGINT  NOT NULL,
    entries TEXT    NOT NULL, -- its rows in found_by, which the next version takes back
    json    TEXT    NOT NULL
);
CREATE UNIQUE INDEX resource_id ON resource (id, type);
CREATE INDEX resource_updated ON resource (updated, type);

-- What they were before.
CREATE TABLE resource_history (
    num      ${identity},
    resource BIGINT  NOT NULL,
    version  INTEGER NOT NULL,
    updated  BIGINT  NOT NULL,
    json     TEXT    NOT NULL
);
CREATE UNIQUE INDEX resource_history_version ON resource_history (resource, version);

-- What resources and orders are found by. One structure and the value first, so that what refers to one patient or order
-- lies together; param is Type.parameter, owner the num of the row found.
CREATE TABLE found_by (
    value  TEXT   ${exact} NOT NULL,
    param  TEXT   NOT NULL,
    system TEXT   NOT NULL,
    owner  BIGINT NOT NULL,
    PRIMARY KEY (value, param, system, owner)
) ${clustered};

-- One row per order: its numbers and where it stands. Filler and accession number and the patient stand in found_by.
CREATE TABLE orders (
    num           ${identity},
    id            TEXT   NOT NULL,
    sender        TEXT   NOT NULL,
    placer_system TEXT   NOT NULL,
    placer        TEXT   NOT NULL,
    filler        TEXT   NOT NULL,
    accession     TEXT   NOT NULL,
    patient_id    TEXT   NOT NULL,
    state         TEXT   NOT NULL,
    reasons       TEXT   NOT NULL,
    due_at        BIGINT,
    updated_at    BIGINT NOT NULL
);
CREATE UNIQUE INDEX orders_id ON orders (id);
CREATE UNIQUE INDEX orders_placer ON orders (placer, placer_system);
CREATE INDEX orders_state ON orders (state, updated_at);

-- What happened to an order, when and by whom; seq is the place in it.
CREATE TABLE timeline (
    order_id TEXT    NOT NULL,
    seq      INTEGER NOT NULL,
    at       BIGINT  NOT NULL,
    event    TEXT    NOT NULL,
    actor    TEXT    NOT NULL,
    detail   TEXT    NOT NULL,
    PRIMARY KEY (order_id, seq)
) ${clustered};

-- Files received, their checksum, the order they belong to.
CREATE TABLE recording (
    id          TEXT   NOT NULL PRIMARY KEY,
    sha256      TEXT   NOT NULL,
    order_id    TEXT,
    path        TEXT   NOT NULL,
    sender      TEXT   NOT NULL,
    state       TEXT   NOT NULL,
    problem     TEXT   NOT NULL,
    received_at BIGINT NOT NULL
);
CREATE UNIQUE INDEX recording_sha256 ON recording (sha256);
CREATE INDEX recording_state ON recording (state, received_at);

-- The outbox. A lane is destination + order; seq is the place in it, so that commit order is lane order on any number of nodes.
CREATE TABLE delivery (
    id            ${identity},
    destination   TEXT     NOT NULL,
    order_id      TEXT     NOT NULL,
    seq           INTEGER  NOT NULL,
    kind          TEXT     NOT NULL,
    content_type  TEXT     NOT NULL,
    path          TEXT,
    created_at    BIGINT   NOT NULL,
    state         TEXT     NOT NULL,
    attempts      INTEGER  NOT NULL DEFAULT 0,
    next_try      BIGINT   NOT NULL,
    claimed_until BIGINT   NOT NULL DEFAULT 0,
    finished_at   BIGINT,
    receipt       TEXT     NOT NULL DEFAULT '',
    last_error    TEXT     NOT NULL DEFAULT ''
);
CREATE UNIQUE INDEX delivery_lane ON delivery (order_id, destination, seq);
CREATE INDEX delivery_due ON delivery (destination, next_try) WHERE state = 'PENDING';
CREATE INDEX delivery_parked ON delivery (id) WHERE state = 'PARKED';

-- The exact bytes to send, apart from the row that each attempt rewrites.
CREATE TABLE delivery_payload (
    delivery ${number} NOT NULL PRIMARY KEY,
    payload  ${bytes}  NOT NULL
);

-- Who reached which patient data, and how.
CREATE TABLE audit (
    id      ${identity},
    at      BIGINT NOT NULL,
    actor   TEXT   NOT NULL,
    action  TEXT   NOT NULL,
    entity  TEXT   NOT NULL,
    outcome TEXT   NOT NULL
);
CREATE INDEX audit_entity ON audit (entity, id);
