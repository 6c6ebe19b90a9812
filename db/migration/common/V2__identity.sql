create table app_user (
    id            uuid                        not null primary key,
    username      varchar(64)                 not null,
    password_hash varchar(255)                not null,
    enabled       boolean                     not null,
    created_at    timestamp(6) with time zone not null,
    constraint app_user_username unique (username)
);

create table app_user_role (
    user_id uuid        not null references app_user (id),
    role    varchar(16) not null,
    primary key (user_id, role)
);

-- A token is 256 random bits; only its SHA-256 is kept.
create table access_token (
    id         uuid                        not null primary key,
    user_id    uuid                        not null references app_user (id),
    token_hash varchar(64)                 not null,
    label      varchar(100)                not null,
    signs      boolean                     not null,
    created_at timestamp(6) with time zone not null,
    expires_at timestamp(6) with time zone not null,
    revoked_at timestamp(6) with time zone,
    constraint access_token_hash unique (token_hash)
);
create index access_token_user on access_token (user_id);
