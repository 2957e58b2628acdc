-- The ledger. One text for SQLite and PostgreSQL; ${identity} and ${bytes} are where their types differ.
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

-- FHIR resources in every version; latest = 1 marks the newest.
CREATE TABLE resource (
    type    TEXT     NOT NULL,
    id      TEXT     NOT NULL,
    version INTEGER  NOT NULL,
    latest  SMALLINT NOT NULL,
    updated BIGINT   NOT NULL,
    json    TEXT     NOT NULL,
    PRIMARY KEY (type, id, version)
);
CREATE INDEX resource_latest ON resource (type, updated, id) WHERE latest = 1;

-- What finds the newest version of a resource.
CREATE TABLE resource_index (
    type   TEXT NOT NULL,
    id     TEXT NOT NULL,
    param  TEXT NOT NULL,
    system TEXT NOT NULL,
    value  TEXT NOT NULL
);
CREATE INDEX resource_index_find ON resource_index (type, param, value, system, id);
CREATE INDEX resource_index_owner ON resource_index (type, id);

-- One row per order: its numbers and where it stands.
CREATE TABLE orders (
    id            TEXT   NOT NULL PRIMARY KEY,
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
CREATE UNIQUE INDEX orders_placer ON orders (placer, placer_system);
CREATE INDEX orders_filler ON orders (filler);
CREATE INDEX orders_accession ON orders (accession);
CREATE INDEX orders_patient ON orders (patient_id);
CREATE INDEX orders_state ON orders (state, updated_at);

-- What happened to an order, when and by whom.
CREATE TABLE timeline (
    id       ${identity},
    order_id TEXT   NOT NULL,
    at       BIGINT NOT NULL,
    event    TEXT   NOT NULL,
    actor    TEXT   NOT NULL,
    detail   TEXT   NOT NULL
);
CREATE INDEX timeline_order ON timeline (order_id, id);

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
    payload       ${bytes},
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
CREATE UNIQUE INDEX delivery_lane ON delivery (destination, order_id, seq);
CREATE INDEX delivery_open ON delivery (destination, order_id, seq) WHERE state <> 'DELIVERED';
CREATE INDEX delivery_due ON delivery (destination, next_try) WHERE state = 'PENDING';
CREATE INDEX delivery_order ON delivery (order_id, id);
CREATE INDEX delivery_parked ON delivery (id) WHERE state = 'PARKED';

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
