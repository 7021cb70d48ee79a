-- ── programme ────────────────────────────────────────────────────────────────────────────────────────────────────────

-- A season's plan as it was issued: a document that nothing changes.
create table season_plan (
    population_id uuid   not null,
    id            uuid   not null,
    -- whose answers it keeps to
    follows       uuid,
    pair_on       date   not null,
    issued_on     date   not null,
    body          text   not null,
    revision      bigint not null,
    primary key (population_id, id),
    foreign key (population_id) references journal_head (population_id),
    foreign key (population_id, follows) references season_plan (population_id, id)
);
create unique index season_plan_revision on season_plan (population_id, revision);
grant select, insert on season_plan to ${app_role}, ${register_role};

-- What plans were computed with, compressed, to compute them again: kinships of candidates and what was wished. Kept beside the
-- journal, which holds the digest; a population that was built from its journal lacks it.
create table season_input (
    population_id uuid  not null,
    digest        text  not null,
    form          bytea not null,
    primary key (population_id, digest),
    foreign key (population_id) references journal_head (population_id)
);
grant select, insert on season_input to ${app_role}, ${register_role};

-- both tell of everybody's animals: only the register reads them
alter table season_plan enable row level security;
create policy register on season_plan to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
alter table season_input enable row level security;
create policy register on season_input to ${register_role} using ((select everything from asking)) with check ((select everything from asking));

-- The last answer of each side to each litter, which keeps its id from plan to plan. The note is the coordinators' to read.
create table season_answer (
    population_id uuid        not null,
    litter_id     uuid        not null,
    side          text        not null check (side in ('dam', 'sire')),
    -- under which it was answered
    plan_id       uuid        not null,
    answer        text        not null,
    reason        text,
    note          text,
    -- which both sides gave each other when this answer made them agree
    grant_ids     uuid[],
    answered_by   uuid        not null,
    answered_at   timestamptz not null,
    revision      bigint      not null,
    primary key (population_id, litter_id, side),
    foreign key (population_id, plan_id) references season_plan (population_id, id)
);
grant select, insert, update, delete on season_answer to ${app_role}, ${register_role};
alter table season_answer enable row level security;
create policy register on season_answer to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
