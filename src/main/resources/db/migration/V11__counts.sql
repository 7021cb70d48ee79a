-- What stood behind a release: never published, read when the next one is prepared.
create table count_basis (
    population_id uuid not null,
    counted_on    date not null,
    body          text not null,
    primary key (population_id, counted_on),
    foreign key (population_id, counted_on) references count_release (population_id, counted_on)
);
grant select, insert on count_basis to ${app_role};

-- The association's parameters of disclosure control; never published.
create table count_rules (
    population_id   uuid    not null,
    fewest_keepers  integer not null,
    percent         integer not null,
    revision        bigint  not null,
    primary key (population_id),
    foreign key (population_id) references journal_head (population_id)
);
grant select, insert, update, delete on count_rules to ${app_role};

-- Keepers who have waived the protection of their own numbers in published counts.
create table count_waiver (
    population_id uuid        not null,
    keeper_id     uuid        not null,
    waived_at     timestamptz not null,
    primary key (population_id, keeper_id),
    foreign key (population_id) references journal_head (population_id)
);
grant select, insert, update, delete on count_waiver to ${app_role};
