-- ── the second wall, cheaper to ask ──────────────────────────────────────────────────────────────────────────────────

-- An asker sees what V14 says (decision 13). Each subquery of a policy is planned, and set up anew for every statement, wanted or not: so
-- their number counts. A policy that looked at an animal of one's own, or at one whose marks were opened, did it through the wall of animals,
-- whose policy came in whole. The views here are the owner's, like those of V14, and ask just that. The wall of animals itself stays as it
-- was: whole registers are read through it, and for that many rows its hash tables are cheaper than the arrays below.

-- the collections that the asker acts for, as one array
create view own_collections with (security_barrier) as
    select array(select k.collection_id
            from collection_keeper k
            join membership m on m.population_id = k.population_id and m.keeper_id = k.keeper_id
            where k.keeper_id = a.keeper_id) as ids
    from asking a;

-- What was opened to the asker to read, by field group: whole collections (…_of); and single animals as collection/animal, since what one
-- collection opens of an animal does not count for another. One row; what a query does not ask of it is not fetched.
create view opened_to_read with (security_barrier) as
    select
        array(select distinct collection_id from opened
            where 'identity' = any (field_groups) and 'read' = any (actions) and animal_ids is null) as identity_of,
        array(select collection_id || '/' || unnest(animal_ids) from opened
            where 'identity' = any (field_groups) and 'read' = any (actions)) as identity,
        array(select distinct collection_id from opened
            where 'parentage' = any (field_groups) and 'read' = any (actions) and animal_ids is null) as parentage_of,
        array(select collection_id || '/' || unnest(animal_ids) from opened
            where 'parentage' = any (field_groups) and 'read' = any (actions)) as parentage,
        array(select distinct collection_id from opened
            where 'marks-and-photos' = any (field_groups) and 'read' = any (actions) and animal_ids is null) as marks_of,
        array(select collection_id || '/' || unnest(animal_ids) from opened
            where 'marks-and-photos' = any (field_groups) and 'read' = any (actions)) as marks,
        array(select distinct collection_id from opened
            where 'breeding-results' = any (field_groups) and 'read' = any (actions) and animal_ids is null) as breeding_of,
        array(select collection_id || '/' || unnest(animal_ids) from opened
            where 'breeding-results' = any (field_groups) and 'read' = any (actions)) as breeding;

-- the animals that the asker holds or owns
create view own_animal with (security_barrier) as
    select a.population_id, a.id
    from animal a
    where array[a.collection_id, a.owner_collection_id] && (select ids from own_collections);

-- those, and the ones that the asker sees and of which the field group was opened to them too
create view marked_animal with (security_barrier) as
    select a.population_id, a.id
    from animal a
    where array[a.collection_id, a.owner_collection_id] && (select ids from own_collections)
        or coalesce(a.collection_id, a.owner_collection_id) is not null
            and exists (select 1 from opened_to_read o
                where (a.collection_id is null or a.collection_id = any (o.marks_of) or a.collection_id || '/' || a.id = any (o.marks))
                    and (a.owner_collection_id is null or a.owner_collection_id = any (o.marks_of) or a.owner_collection_id || '/' || a.id = any (o.marks))
                    and ((a.collection_id is null or a.collection_id = any (o.identity_of) or a.collection_id || '/' || a.id = any (o.identity))
                            and (a.owner_collection_id is null or a.owner_collection_id = any (o.identity_of) or a.owner_collection_id || '/' || a.id = any (o.identity))
                        or (a.population_id, a.id) in (select population_id, animal_id from asking_transfer)));

create view parented_animal with (security_barrier) as
    select a.population_id, a.id
    from animal a
    where array[a.collection_id, a.owner_collection_id] && (select ids from own_collections)
        or coalesce(a.collection_id, a.owner_collection_id) is not null
            and exists (select 1 from opened_to_read o
                where (a.collection_id is null or a.collection_id = any (o.parentage_of) or a.collection_id || '/' || a.id = any (o.parentage))
                    and (a.owner_collection_id is null or a.owner_collection_id = any (o.parentage_of) or a.owner_collection_id || '/' || a.id = any (o.parentage))
                    and ((a.collection_id is null or a.collection_id = any (o.identity_of) or a.collection_id || '/' || a.id = any (o.identity))
                            and (a.owner_collection_id is null or a.owner_collection_id = any (o.identity_of) or a.owner_collection_id || '/' || a.id = any (o.identity))
                        or (a.population_id, a.id) in (select population_id, animal_id from asking_transfer)));

grant select on own_collections, opened_to_read, own_animal, marked_animal, parented_animal to ${app_role};

-- the animals that are, or were, in a transfer of the asker's; as often as they were
create or replace view asking_transfer with (security_barrier) as
    select t.population_id, t.id, t.animal_id
    from transfer t
    where t.to_keeper_id = (select keeper_id from asking)
    union all
    select t.population_id, t.id, t.animal_id
    from asking_collection c
    join transfer t on t.population_id = c.population_id and t.from_collection_id = c.collection_id
    union all
    select t.population_id, t.id, t.animal_id
    from asking_collection c
    join transfer t on t.population_id = c.population_id and t.to_collection_id = c.collection_id;
create index transfer_to_collection on transfer (population_id, to_collection_id);

alter policy asker on candidate_sire using (
    exists (select 1 from parented_animal a where a.population_id = candidate_sire.population_id and a.id = candidate_sire.animal_id));

alter policy asker on identifier using (
    case when kind = 'own-reference' then collection_id = any ((select ids from own_collections)::uuid[])
        else exists (select 1 from marked_animal a where a.population_id = identifier.population_id and a.id = identifier.animal_id) end);

alter policy asker on photo using (
    exists (select 1 from marked_animal a where a.population_id = photo.population_id and a.id = photo.animal_id)
    or exists (select 1 from litter l where l.population_id = photo.population_id and l.id = photo.litter_id));

alter policy asker on transfer using (
    (population_id, id) in (select population_id, id from asking_transfer)
    or exists (select 1 from own_animal a where a.population_id = transfer.population_id and a.id = transfer.animal_id));

alter policy asker on handover_sheet using (
    from_collection_id = any ((select ids from own_collections)::uuid[])
    or (population_id, animal_id) in (select population_id, animal_id from asking_transfer)
    or exists (select 1 from own_animal a where a.population_id = handover_sheet.population_id and a.id = handover_sheet.animal_id));

alter policy asker on litter using (
    collection_id = any ((select ids from own_collections)::uuid[])
    or exists (select 1 from opened_to_read o
        where collection_id = any (o.breeding_of) or collection_id || '/' || dam_id = any (o.breeding))
    or exists (select 1 from own_animal a where a.population_id = litter.population_id and a.id = litter.dam_id));

alter policy asker on introduction using (
    collection_id = any ((select ids from own_collections)::uuid[])
    or exists (select 1 from own_animal a where a.population_id = introduction.population_id and a.id = introduction.female_id)
    or exists (select 1 from own_animal a where a.population_id = introduction.population_id and a.id = introduction.male_id));

alter policy asker on breeding_sign using (
    collection_id = any ((select ids from own_collections)::uuid[])
    or exists (select 1 from own_animal a where a.population_id = breeding_sign.population_id and a.id = breeding_sign.female_id));

alter policy asker on incubation using (
    collection_id = any ((select ids from own_collections)::uuid[])
    or exists (select 1 from own_animal a where a.population_id = incubation.population_id and a.id = incubation.female_id));

alter policy asker on care_record using (
    collection_id = any ((select ids from own_collections)::uuid[])
    or exists (select 1 from own_animal a where a.population_id = care_record.population_id and a.id = care_record.animal_id));
