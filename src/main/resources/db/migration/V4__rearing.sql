-- ── diary ────────────────────────────────────────────────────────────────────────────────────────────────────────────

create table care_record (
    population_id uuid    not null,
    id            uuid    not null,
    animal_id     uuid    not null,
    -- that it was written for
    collection_id uuid    not null,
    kind          text    not null check (kind in
                      ('shed', 'meal', 'measures', 'move', 'health-note', 'test', 'quarantine')),
    happened_on   date    not null,
    -- the record in the form of the journal
    body          text    not null,
    withdrawn     boolean not null,
    revision      bigint  not null,
    primary key (population_id, id),
    foreign key (population_id, animal_id) references animal (population_id, id),
    foreign key (population_id, collection_id) references collection (population_id, id)
);
create index care_record_animal on care_record (population_id, animal_id, happened_on);

grant select, insert, update, delete on care_record to ${app_role};
