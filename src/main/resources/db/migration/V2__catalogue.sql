-- What was left as it is although a rule speaks against it, and how the sex of an animal was determined.

create table left_finding (
    population_id uuid        not null,
    id            uuid        not null,
    -- what it is about: an animal, a litter, …; of which kind is for the room to say that has it
    subject_kind  text        not null,
    subject_id    uuid        not null,
    rule          text        not null,
    level         text        not null check (level in ('block', 'warning', 'notice')),
    field         text,
    value         text,
    message       text        not null,
    reason        text        not null,
    left_by       uuid        not null,
    left_at       timestamptz not null,
    primary key (population_id, id),
    foreign key (population_id) references journal_head (population_id)
);
create index left_finding_subject on left_finding (population_id, subject_id);

-- Each time that a sex was determined; the last one stands with the animal.
create table sex_determination (
    population_id uuid   not null,
    animal_id     uuid   not null,
    seq           bigint not null,
    sex           text   not null check (sex in ('female', 'male', 'unknown')),
    method        text,
    confidence    text,
    determined_on date,
    determined_by uuid   not null,
    primary key (population_id, animal_id, seq),
    foreign key (population_id, animal_id) references animal (population_id, id),
    check ((method is null) = (confidence is null))
);

alter table animal
    add column sex_method text check (sex_method in
        ('probing', 'popping', 'spurs', 'ultrasound', 'dna', 'breeding', 'looks')),
    add column sex_confidence text check (sex_confidence in ('presumed', 'examined', 'confirmed')),
    add column removed_from_dead_dam boolean not null default false;

-- a transponder as it was written, where that differs from the form in which it is compared
alter table identifier add column written text;

grant select, insert, update, delete on left_finding, sex_determination to ${app_role};
