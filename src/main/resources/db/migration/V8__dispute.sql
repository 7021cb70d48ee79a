-- A keeper reports an animal in a collection of theirs that the register has elsewhere. The register's side is as it was
-- when that was said: while a dispute is open, nothing moves the animal but its end.
create table dispute (
    population_id                  uuid        not null,
    id                             uuid        not null,
    animal_id                      uuid        not null,
    -- the transfer that does not agree with it: the animal's last
    transfer_id                    uuid        not null,
    reported_by                    uuid        not null,
    reported_at                    timestamptz not null,
    reported_collection_id         uuid        not null,
    -- whose it is if that is so
    reported_owner_collection_id   uuid        not null,
    -- where it is by the register; the giver's collection while it is handed out
    registered_collection_id       uuid        not null,
    registered_owner_collection_id uuid        not null,
    seen_on                        date        not null,
    note                           text,
    state                          text        not null check (state in
                                       ('open', 'withdrawn', 'conceded', 'upheld', 'dismissed')),
    ended_at                       timestamptz,
    reason                         text,
    revision                       bigint      not null,
    primary key (population_id, id),
    foreign key (population_id, animal_id) references animal (population_id, id),
    foreign key (population_id, transfer_id) references transfer (population_id, id),
    foreign key (population_id, reported_collection_id) references collection (population_id, id),
    foreign key (population_id, reported_owner_collection_id) references collection (population_id, id),
    foreign key (population_id, registered_collection_id) references collection (population_id, id),
    foreign key (population_id, registered_owner_collection_id) references collection (population_id, id),
    check ((state = 'open') = (ended_at is null))
);
-- an animal is in at most one open dispute
create unique index dispute_open on dispute (population_id, animal_id) where state = 'open';
create index dispute_animal on dispute (population_id, animal_id);
create index dispute_transfer on dispute (population_id, transfer_id);
create index dispute_reported_collection on dispute (population_id, reported_collection_id);
create index dispute_registered_collection on dispute (population_id, registered_collection_id);
create index dispute_registered_owner_collection on dispute (population_id, registered_owner_collection_id);

-- the open dispute that it is in
alter table animal add column dispute_id uuid;
alter table animal add foreign key (population_id, dispute_id) references dispute (population_id, id);

grant select, insert, update, delete on dispute to ${app_role};
