-- Who was put together with whom, what was seen of a female's cycle, and the clutches in incubators. A cycle is derived
-- from these rows and from her litters, and is not stored.

create table introduction (
    population_id uuid    not null,
    id            uuid    not null,
    female_id     uuid    not null,
    male_id       uuid    not null,
    from_on       date    not null,
    until_on      date,
    -- of whoever recorded it
    collection_id uuid    not null,
    notes         text,
    withdrawn     boolean not null,
    recorded_by   uuid    not null,
    revision      bigint  not null,
    primary key (population_id, id),
    foreign key (population_id, female_id) references animal (population_id, id),
    foreign key (population_id, male_id) references animal (population_id, id),
    foreign key (population_id, collection_id) references collection (population_id, id),
    check (until_on is null or until_on >= from_on),
    check (female_id <> male_id)
);
create index introduction_female on introduction (population_id, female_id);
create index introduction_male on introduction (population_id, male_id);
create index introduction_collection on introduction (population_id, collection_id);

create table breeding_sign (
    population_id uuid    not null,
    id            uuid    not null,
    female_id     uuid    not null,
    kind          text    not null check (kind in ('copulation', 'ovulation', 'post-ovulation-shed', 'laying',
                      'labour-started', 'labour-finished')),
    happened_on   date    not null,
    happened_at   timestamptz,
    how_known     text    not null check (how_known in ('seen', 'skin-found', 'guessed')),
    male_id       uuid,
    eggs          integer check (eggs > 0),
    -- of whoever recorded it
    collection_id uuid    not null,
    notes         text,
    withdrawn     boolean not null,
    recorded_by   uuid    not null,
    revision      bigint  not null,
    primary key (population_id, id),
    foreign key (population_id, female_id) references animal (population_id, id),
    foreign key (population_id, male_id) references animal (population_id, id),
    foreign key (population_id, collection_id) references collection (population_id, id)
);
create index breeding_sign_female on breeding_sign (population_id, female_id);
create index breeding_sign_collection on breeding_sign (population_id, collection_id);

create table incubation (
    population_id     uuid          not null,
    id                uuid          not null,
    female_id         uuid          not null,
    started_on        date          not null,
    eggs              integer       check (eggs > 0),
    set_point_celsius numeric(5, 2) not null,
    -- as it was written, with its unit
    set_point_written text          not null,
    collection_id     uuid          not null,
    notes             text,
    recorded_by       uuid          not null,
    revision          bigint        not null,
    primary key (population_id, id),
    foreign key (population_id, female_id) references animal (population_id, id),
    foreign key (population_id, collection_id) references collection (population_id, id)
);
create index incubation_female on incubation (population_id, female_id);
create index incubation_collection on incubation (population_id, collection_id);

create table incubation_reading (
    population_id uuid          not null,
    id            uuid          not null,
    incubation_id uuid          not null,
    read_at       timestamptz   not null,
    celsius       numeric(5, 2) not null,
    written       text          not null,
    primary key (population_id, id),
    foreign key (population_id, incubation_id) references incubation (population_id, id)
);
create index incubation_reading_incubation on incubation_reading (population_id, incubation_id);

grant select, insert, update, delete on introduction, breeding_sign, incubation, incubation_reading to ${app_role};
