-- What was stated of a litter's outcome, each time anew: the last is the one that holds.
create table litter_version (
    population_id       uuid        not null,
    litter_id           uuid        not null,
    seq                 bigint      not null,
    stated_by           uuid        not null,
    stated_at           timestamptz not null,
    live_born           integer     not null,
    malformed_live      integer     not null,
    stillborn           integer     not null,
    malformed_stillborn integer     not null,
    part_developed      integer     not null,
    unfertilised        integer     not null,
    infertile           integer     not null,
    early_dead          integer     not null,
    ova_found           integer     not null,
    primary key (population_id, litter_id, seq),
    foreign key (population_id, litter_id) references litter (population_id, id)
);
grant select, insert, update, delete on litter_version to ${app_role};
