-- ── planning ─────────────────────────────────────────────────────────────────────────────────────────────────────────

-- Who was proposed to the holder of an animal under a pseudonym, once in a calendar month. It is an answer that was given and
-- no fact of the population: it is in no journal. Rows of earlier months are deleted.
create table unnamed_partners (
    population_id uuid        not null,
    -- that holds the animal
    collection_id uuid        not null,
    animal_id     uuid        not null,
    -- its first day
    month         date        not null,
    answered_at   timestamptz not null,
    -- each pseudonym stands for the partner at the same place
    pseudonyms    text[]      not null,
    partner_ids   uuid[]      not null,
    primary key (population_id, collection_id, animal_id, month),
    check (cardinality(pseudonyms) = cardinality(partner_ids))
);

grant select, insert, delete on unnamed_partners to ${app_role};
