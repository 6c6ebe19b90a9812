-- Failed sign-ins in a row, counted for a name and for an address; both are kept as a hash only.
create table sign_in_failure (
    subject     varchar(64)                 not null primary key,
    failures    integer                     not null,
    blocked_to  timestamp(6) with time zone not null
);
