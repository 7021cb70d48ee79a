-- ── the second wall ──────────────────────────────────────────────────────────────────────────────────────────────────

-- Row-level security (decision 13). Whom a connection speaks for stands in its setting demebook.asking, as "who:seal"; only who has
-- the key can seal a name. The role that serves requests can read neither the key nor, without a seal, a row of a walled table.
-- The views are the owner's: they read what their reader may not.

-- Two roles, for the planner's sake: a statement of the register is not planned with the policies of askers. The application's may
-- take on the register's (decision 13), which without the seal sees nothing either.
grant usage on schema ${flyway:defaultSchema} to ${register_role};
grant select, insert, update, delete on all tables in schema ${flyway:defaultSchema} to ${register_role};
revoke update, delete on journal_entry, count_release, count_basis from ${register_role};
revoke update on handover_sheet_words, unnamed_partners from ${register_role};

create table wall_key (
    key bytea not null,
    primary key (key)
);
insert into wall_key
    select decode(replace(gen_random_uuid()::text || gen_random_uuid()::text, '-', ''), 'hex');

-- one row, or none when nobody, or nobody known, is spoken for
create view asking with (security_barrier) as
    select said.who = 'register' as everything,
        case when said.who <> 'register' then said.who::uuid end as keeper_id
    from (select split_part(current_setting('demebook.asking', true), ':', 1) as who,
                 split_part(current_setting('demebook.asking', true), ':', 2) as seal) said
    join wall_key k on said.seal = encode(sha256(k.key || sha256(k.key || convert_to(said.who, 'UTF8'))), 'hex');

-- the collections that the asker acts for
create view asking_collection with (security_barrier) as
    select k.population_id, k.collection_id
    from asking a
    join collection_keeper k on k.keeper_id = a.keeper_id
    join membership m on m.population_id = k.population_id and m.keeper_id = k.keeper_id;

-- what was opened to the asker, in the populations that they belong to. Clocks of two machines differ: a grant may begin a minute ahead.
create view opened with (security_barrier) as
    select g.population_id, g.id, g.collection_id, g.animal_ids, g.field_groups, g.actions
    from asking a
    join membership m on m.keeper_id = a.keeper_id
    join consent_grant g on g.population_id = m.population_id
    where (g.recipient in ('public', 'members')
            or g.recipient = 'coordinators' and m.role = 'coordinator'
            or g.recipient = 'keeper' and g.recipient_keeper = a.keeper_id)
        and g.withdrawn_at is null and g.superseded_at is null
        and g.from_at <= now() + interval '1 minute' and now() < g.until_at;

-- the animals that are, or were, in a transfer of the asker's
create view asking_transfer with (security_barrier) as
    select t.population_id, t.id, t.animal_id
    from asking a
    join transfer t on t.to_keeper_id = a.keeper_id
    union
    select t.population_id, t.id, t.animal_id
    from asking_collection c
    join transfer t on t.population_id = c.population_id and t.from_collection_id = c.collection_id
    union
    select t.population_id, t.id, t.animal_id
    from asking_collection c
    join transfer t on t.population_id = c.population_id and t.to_collection_id = c.collection_id;

grant select on asking, asking_collection, opened, asking_transfer to ${app_role};
grant select on asking to ${register_role};

-- what only the register itself reads
alter table journal_entry enable row level security;
create policy register on journal_entry to ${register_role} using ((select everything from asking)) with check ((select everything from asking));

alter table count_basis enable row level security;
create policy register on count_basis to ${register_role} using ((select everything from asking)) with check ((select everything from asking));

alter table left_finding enable row level security;
create policy register on left_finding to ${register_role} using ((select everything from asking)) with check ((select everything from asking));

alter table unnamed_partners enable row level security;
create policy register on unnamed_partners to ${register_role} using ((select everything from asking)) with check ((select everything from asking));

-- animals, and what is said of them
alter table animal enable row level security;
create policy register on animal to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on animal for select to ${app_role} using (
    collection_id in (select collection_id from asking_collection)
        or owner_collection_id in (select collection_id from asking_collection)
        or (coalesce(collection_id, owner_collection_id) is not null
            and (collection_id is null or (collection_id in (select collection_id from opened
                where 'identity' = any (field_groups) and 'read' = any (actions) and animal_ids is null)
            or (collection_id, id) in (select collection_id, unnest(animal_ids) from opened
                where 'identity' = any (field_groups) and 'read' = any (actions))))
            and (owner_collection_id is null or (owner_collection_id in (select collection_id from opened
                where 'identity' = any (field_groups) and 'read' = any (actions) and animal_ids is null)
            or (owner_collection_id, id) in (select collection_id, unnest(animal_ids) from opened
                where 'identity' = any (field_groups) and 'read' = any (actions)))))
        or (population_id, id) in (select population_id, animal_id from asking_transfer));

alter table candidate_sire enable row level security;
create policy register on candidate_sire to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on candidate_sire for select to ${app_role} using (
    exists (select 1 from animal a where a.population_id = candidate_sire.population_id and a.id = candidate_sire.animal_id
        and (a.collection_id in (select collection_id from asking_collection)
        or a.owner_collection_id in (select collection_id from asking_collection)
        or (coalesce(a.collection_id, a.owner_collection_id) is not null
            and (a.collection_id is null or (a.collection_id in (select collection_id from opened
                where 'parentage' = any (field_groups) and 'read' = any (actions) and animal_ids is null)
            or (a.collection_id, a.id) in (select collection_id, unnest(animal_ids) from opened
                where 'parentage' = any (field_groups) and 'read' = any (actions))))
            and (a.owner_collection_id is null or (a.owner_collection_id in (select collection_id from opened
                where 'parentage' = any (field_groups) and 'read' = any (actions) and animal_ids is null)
            or (a.owner_collection_id, a.id) in (select collection_id, unnest(animal_ids) from opened
                where 'parentage' = any (field_groups) and 'read' = any (actions))))))));

alter table sex_determination enable row level security;
create policy register on sex_determination to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on sex_determination for select to ${app_role} using (
    exists (select 1 from animal a where a.population_id = sex_determination.population_id and a.id = sex_determination.animal_id
        and (true)));

alter table breeding_hold enable row level security;
create policy register on breeding_hold to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on breeding_hold for select to ${app_role} using (
    exists (select 1 from animal a where a.population_id = breeding_hold.population_id and a.id = breeding_hold.animal_id
        and (true)));

alter table identifier enable row level security;
create policy register on identifier to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on identifier for select to ${app_role} using (
    case when kind = 'own-reference' then collection_id in (select collection_id from asking_collection)
        else exists (select 1 from animal a where a.population_id = identifier.population_id and a.id = identifier.animal_id
        and (a.collection_id in (select collection_id from asking_collection)
        or a.owner_collection_id in (select collection_id from asking_collection)
        or (coalesce(a.collection_id, a.owner_collection_id) is not null
            and (a.collection_id is null or (a.collection_id in (select collection_id from opened
                where 'marks-and-photos' = any (field_groups) and 'read' = any (actions) and animal_ids is null)
            or (a.collection_id, a.id) in (select collection_id, unnest(animal_ids) from opened
                where 'marks-and-photos' = any (field_groups) and 'read' = any (actions))))
            and (a.owner_collection_id is null or (a.owner_collection_id in (select collection_id from opened
                where 'marks-and-photos' = any (field_groups) and 'read' = any (actions) and animal_ids is null)
            or (a.owner_collection_id, a.id) in (select collection_id, unnest(animal_ids) from opened
                where 'marks-and-photos' = any (field_groups) and 'read' = any (actions))))))) end);

alter table same_animal_claim enable row level security;
create policy register on same_animal_claim to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on same_animal_claim for select to ${app_role} using (
    exists (select 1 from animal a where a.population_id = same_animal_claim.population_id
        and a.id in (same_animal_claim.animal_id, same_animal_claim.other_id)));

-- what passes between two
alter table transfer enable row level security;
create policy register on transfer to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on transfer for select to ${app_role} using (
    (population_id, id) in (select population_id, id from asking_transfer)
    or exists (select 1 from animal a where a.population_id = transfer.population_id and a.id = transfer.animal_id
        and (a.collection_id in (select collection_id from asking_collection) or a.owner_collection_id in (select collection_id from asking_collection))));

alter table dispute enable row level security;
create policy register on dispute to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on dispute for select to ${app_role} using (
    reported_collection_id in (select collection_id from asking_collection) or reported_owner_collection_id in (select collection_id from asking_collection)
    or registered_collection_id in (select collection_id from asking_collection) or registered_owner_collection_id in (select collection_id from asking_collection)
    or (population_id, transfer_id) in (select population_id, id from asking_transfer)
    or exists (select 1 from asking a join membership m on m.keeper_id = a.keeper_id
        where m.population_id = dispute.population_id and m.role = 'coordinator'));

alter table handover_sheet enable row level security;
create policy register on handover_sheet to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on handover_sheet for select to ${app_role} using (
    from_collection_id in (select collection_id from asking_collection)
    or (population_id, animal_id) in (select population_id, animal_id from asking_transfer)
    or exists (select 1 from animal a where a.population_id = handover_sheet.population_id and a.id = handover_sheet.animal_id
        and (a.collection_id in (select collection_id from asking_collection) or a.owner_collection_id in (select collection_id from asking_collection))));

alter table handover_sheet_words enable row level security;
create policy register on handover_sheet_words to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on handover_sheet_words for select to ${app_role} using (
    exists (select 1 from handover_sheet s where s.population_id = handover_sheet_words.population_id
        and s.id = handover_sheet_words.sheet_id));

-- keepers' own records: for whom they were written, and who has the animal now
alter table litter enable row level security;
create policy register on litter to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on litter for select to ${app_role} using (
    collection_id in (select collection_id from asking_collection)
    or (collection_id in (select collection_id from opened
                where 'breeding-results' = any (field_groups) and 'read' = any (actions) and animal_ids is null)
            or (collection_id, dam_id) in (select collection_id, unnest(animal_ids) from opened
                where 'breeding-results' = any (field_groups) and 'read' = any (actions)))
    or exists (select 1 from animal a where a.population_id = litter.population_id and a.id = litter.dam_id
        and (a.collection_id in (select collection_id from asking_collection) or a.owner_collection_id in (select collection_id from asking_collection))));

alter table litter_version enable row level security;
create policy register on litter_version to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on litter_version for select to ${app_role} using (
    exists (select 1 from litter l where l.population_id = litter_version.population_id and l.id = litter_version.litter_id));

alter table photo enable row level security;
create policy register on photo to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on photo for select to ${app_role} using (
    exists (select 1 from animal a where a.population_id = photo.population_id and a.id = photo.animal_id
        and (a.collection_id in (select collection_id from asking_collection)
        or a.owner_collection_id in (select collection_id from asking_collection)
        or (coalesce(a.collection_id, a.owner_collection_id) is not null
            and (a.collection_id is null or (a.collection_id in (select collection_id from opened
                where 'marks-and-photos' = any (field_groups) and 'read' = any (actions) and animal_ids is null)
            or (a.collection_id, a.id) in (select collection_id, unnest(animal_ids) from opened
                where 'marks-and-photos' = any (field_groups) and 'read' = any (actions))))
            and (a.owner_collection_id is null or (a.owner_collection_id in (select collection_id from opened
                where 'marks-and-photos' = any (field_groups) and 'read' = any (actions) and animal_ids is null)
            or (a.owner_collection_id, a.id) in (select collection_id, unnest(animal_ids) from opened
                where 'marks-and-photos' = any (field_groups) and 'read' = any (actions)))))))
    or exists (select 1 from litter l where l.population_id = photo.population_id and l.id = photo.litter_id));

alter table photo_content enable row level security;
create policy register on photo_content to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on photo_content for select to ${app_role} using (
    exists (select 1 from photo p where p.population_id = photo_content.population_id and p.sha256 = photo_content.sha256));

alter table introduction enable row level security;
create policy register on introduction to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on introduction for select to ${app_role} using (
    collection_id in (select collection_id from asking_collection)
    or exists (select 1 from animal a where a.population_id = introduction.population_id and a.id = introduction.female_id
        and (a.collection_id in (select collection_id from asking_collection) or a.owner_collection_id in (select collection_id from asking_collection)))
    or exists (select 1 from animal a where a.population_id = introduction.population_id and a.id = introduction.male_id
        and (a.collection_id in (select collection_id from asking_collection) or a.owner_collection_id in (select collection_id from asking_collection))));

alter table breeding_sign enable row level security;
create policy register on breeding_sign to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on breeding_sign for select to ${app_role} using (
    collection_id in (select collection_id from asking_collection)
    or exists (select 1 from animal a where a.population_id = breeding_sign.population_id and a.id = breeding_sign.female_id
        and (a.collection_id in (select collection_id from asking_collection) or a.owner_collection_id in (select collection_id from asking_collection))));

alter table incubation enable row level security;
create policy register on incubation to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on incubation for select to ${app_role} using (
    collection_id in (select collection_id from asking_collection)
    or exists (select 1 from animal a where a.population_id = incubation.population_id and a.id = incubation.female_id
        and (a.collection_id in (select collection_id from asking_collection) or a.owner_collection_id in (select collection_id from asking_collection))));

alter table care_record enable row level security;
create policy register on care_record to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on care_record for select to ${app_role} using (
    collection_id in (select collection_id from asking_collection)
    or exists (select 1 from animal a where a.population_id = care_record.population_id and a.id = care_record.animal_id
        and (a.collection_id in (select collection_id from asking_collection) or a.owner_collection_id in (select collection_id from asking_collection))));

alter table incubation_reading enable row level security;
create policy register on incubation_reading to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on incubation_reading for select to ${app_role} using (
    exists (select 1 from incubation i where i.population_id = incubation_reading.population_id
        and i.id = incubation_reading.incubation_id));

alter table care_completion enable row level security;
create policy register on care_completion to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on care_completion for select to ${app_role} using (
    collection_id in (select collection_id from asking_collection));

alter table care_postponement enable row level security;
create policy register on care_postponement to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on care_postponement for select to ${app_role} using (
    collection_id in (select collection_id from asking_collection));

alter table care_silence enable row level security;
create policy register on care_silence to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on care_silence for select to ${app_role} using (
    collection_id in (select collection_id from asking_collection));

alter table own_care_task enable row level security;
create policy register on own_care_task to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on own_care_task for select to ${app_role} using (
    collection_id in (select collection_id from asking_collection));

-- what is shared, who looked, and what was proposed
alter table consent_grant enable row level security;
create policy register on consent_grant to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on consent_grant for select to ${app_role} using (
    collection_id in (select collection_id from asking_collection)
    or id in (select id from opened));

alter table sharing_choice enable row level security;
create policy register on sharing_choice to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on sharing_choice for select to ${app_role} using (
    collection_id in (select collection_id from asking_collection));

alter table disclosure enable row level security;
create policy register on disclosure to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on disclosure for select to ${app_role} using (
    collection_id in (select collection_id from asking_collection));

alter table count_waiver enable row level security;
create policy register on count_waiver to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on count_waiver for select to ${app_role} using (
    keeper_id = (select keeper_id from asking));

alter table import_run enable row level security;
create policy register on import_run to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on import_run to ${app_role} using (keeper_id = (select keeper_id from asking)) with check (keeper_id = (select keeper_id from asking));
