-- ── care: what keepers did about the things to do; the things themselves are derived, but for those of their own ─────

create table care_completion (
    population_id uuid   not null,
    collection_id uuid   not null,
    key           text   not null,
    kind          text   not null,
    animal_id     uuid,
    litter_id     uuid,
    due_on        date   not null,
    what          text   not null,
    why           text   not null,
    done_on       date   not null,
    done_by       uuid   not null,
    revision      bigint not null,
    primary key (population_id, collection_id, key),
    foreign key (population_id, collection_id) references collection (population_id, id),
    foreign key (population_id, animal_id) references animal (population_id, id),
    foreign key (population_id, litter_id) references litter (population_id, id)
);
create index care_completion_done_on on care_completion (population_id, collection_id, done_on);

-- moved_to is null where the task is on its own day again; the count stays, since a calendar counts changes
create table care_postponement (
    population_id uuid    not null,
    collection_id uuid    not null,
    key           text    not null,
    moved_to      date,
    times_moved   integer not null,
    primary key (population_id, collection_id, key),
    foreign key (population_id, collection_id) references collection (population_id, id)
);

create table care_silence (
    population_id uuid        not null,
    id            uuid        not null,
    collection_id uuid        not null,
    scope         text        not null check (scope in ('task', 'kind-of-animal', 'kind')),
    kind          text        not null,
    animal_id     uuid,
    key           text,
    silenced_at   timestamptz not null,
    primary key (population_id, id),
    foreign key (population_id, collection_id) references collection (population_id, id),
    foreign key (population_id, animal_id) references animal (population_id, id),
    check ((scope = 'task') = (key is not null)),
    check (scope <> 'kind-of-animal' or animal_id is not null)
);
create index care_silence_collection on care_silence (population_id, collection_id);

create table own_care_task (
    population_id uuid    not null,
    id            uuid    not null,
    collection_id uuid    not null,
    animal_id     uuid,
    what          text    not null,
    due_on        date    not null,
    every_days    integer check (every_days > 0),
    -- 1, 2, 3 …: which time it is to be done next
    occurrence    integer not null,
    primary key (population_id, id),
    foreign key (population_id, collection_id) references collection (population_id, id),
    foreign key (population_id, animal_id) references animal (population_id, id)
);
create index own_care_task_collection on own_care_task (population_id, collection_id);

grant select, insert, update, delete on care_completion, care_postponement, care_silence, own_care_task to ${app_role};

-- ── the node itself: the secret address of a keeper's calendar, as a hash; it is in no journal ───────────────────────

create table calendar_address (
    keeper_id   uuid        not null,
    secret_hash text        not null,
    opened_at   timestamptz not null,
    primary key (keeper_id),
    foreign key (keeper_id) references keeper (id)
);
create unique index calendar_address_secret on calendar_address (secret_hash);

grant select, insert, update, delete on calendar_address to ${app_role};
