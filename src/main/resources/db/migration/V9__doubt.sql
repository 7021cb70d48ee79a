-- A sire that is named with low confidence.
alter table animal add column sire_doubtful boolean not null default false;
alter table animal add constraint animal_sire_doubtful check (not sire_doubtful or sire_kind = 'known');

-- It stands in what was stated of the sire.
alter table litter drop column sire_confidence;

-- The last word on whether an animal is to breed; without one, what has no sire is on hold.
create table breeding_hold (
    population_id uuid        not null,
    animal_id     uuid        not null,
    on_hold       boolean     not null,
    reason        text        not null,
    stated_by     uuid        not null,
    stated_at     timestamptz not null,
    revision      bigint      not null,
    primary key (population_id, animal_id),
    foreign key (population_id, animal_id) references animal (population_id, id)
);
grant select, insert, update, delete on breeding_hold to ${app_role};
