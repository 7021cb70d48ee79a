-- ── approaches ───────────────────────────────────────────────────────────────────────────────────────────────────────

-- A keeper asks, through the house, the keeper of an unnamed partner. What has become of it follows from the answer, from the
-- days, from where both animals are and from what is granted: it is stored nowhere.
create table approach (
    population_id         uuid   not null,
    id                    uuid   not null,
    -- the side that asks
    collection_id         uuid   not null,
    animal_id             uuid   not null,
    -- under which the asked side knows its animal
    pseudonym             text   not null,
    proposed_by           uuid   not null,
    proposed_on           date   not null,
    -- the side that is asked: where the partner was then
    partner_collection_id uuid   not null,
    partner_id            uuid   not null,
    -- under which the partner was proposed
    partner_pseudonym     text   not null,
    words                 text,
    answer                text check (answer in ('agreed', 'refused')),
    answered_on           date,
    -- which the two sides gave each other when the asked side agreed
    grant_ids             uuid[],
    withdrawn_on          date,
    revision              bigint not null,
    primary key (population_id, id),
    foreign key (population_id, collection_id) references collection (population_id, id),
    foreign key (population_id, partner_collection_id) references collection (population_id, id),
    foreign key (population_id, animal_id) references animal (population_id, id),
    foreign key (population_id, partner_id) references animal (population_id, id),
    check ((answer is null) = (answered_on is null)),
    check ((grant_ids is not null) = (answer is not null and answer = 'agreed'))
);
create index approach_collection on approach (population_id, collection_id);
create index approach_partner_collection on approach (population_id, partner_collection_id);

grant select, insert, update, delete on approach to ${app_role}, ${register_role};

-- the row says whose the partner is: only the register reads it
alter table approach enable row level security;
create policy register on approach to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
