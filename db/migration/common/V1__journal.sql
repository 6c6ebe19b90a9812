-- A chain is the record of one thing: a car, a calibration revision, a part spec, or the shop itself.
-- Its head is the row that every write of the chain updates first, and so the lock.
create table chain_head (
    chain_id         uuid                        not null primary key,
    kind             varchar(16)                 not null,
    seq              bigint                      not null,
    last_hash        varchar(64)                 not null,
    last_recorded_at timestamp(6) with time zone not null,
    -- cars only: the retune item that is open
    open_item_id     uuid
);

-- Append-only (triggers in the vendor folders). body holds the canonical bytes (RFC 8785) that hash is computed over.
create table journal_entry (
    chain_id     uuid                        not null references chain_head (chain_id),
    seq          bigint                      not null check (seq > 0),
    id           uuid                        not null,
    kind         varchar(40)                 not null,
    effective_at timestamp(6) with time zone not null,
    recorded_at  timestamp(6) with time zone not null,
    recorded_by  uuid                        not null,
    body         text                        not null,
    prev_hash    varchar(64)                 not null,
    hash         varchar(64)                 not null,
    primary key (chain_id, seq),
    constraint journal_entry_id unique (id),
    -- a chain cannot fork, even if the head were wrong
    constraint journal_entry_no_fork unique (chain_id, prev_hash),
    constraint journal_entry_not_ahead check (effective_at <= recorded_at)
);

-- Names, telephone numbers, mail addresses, signatures and free notes. The record holds a salted commitment to each;
-- an erasure empties salt and text, and the record stands.
create table personal_data (
    id        uuid                        not null primary key,
    chain_id  uuid                        not null references chain_head (chain_id),
    salt      bytea,
    text      varchar(8000),
    kept_at   timestamp(6) with time zone not null,
    erased_at timestamp(6) with time zone,
    constraint personal_data_whole check ((salt is null) = (text is null) and (text is null) = (erased_at is not null))
);
create index personal_data_chain on personal_data (chain_id);

-- One row for each POST that carried a key, with the answer it got; kept for 24 hours.
create table idempotency (
    principal   uuid                        not null,
    idem_key    varchar(255)                not null,
    fingerprint varchar(64)                 not null,
    answer      text,
    created_at  timestamp(6) with time zone not null,
    primary key (principal, idem_key)
);
create index idempotency_age on idempotency (created_at);

insert into chain_head (chain_id, kind, seq, last_hash, last_recorded_at)
values ('00000000-0000-7000-8000-000000000001', 'SHOP', 0,
        '0000000000000000000000000000000000000000000000000000000000000000', timestamp with time zone '2000-01-01 00:00:00+00'),
       ('00000000-0000-7000-8000-000000000002', 'IDENTITY', 0,
        '0000000000000000000000000000000000000000000000000000000000000000', timestamp with time zone '2000-01-01 00:00:00+00');
