-- ── crossings ────────────────────────────────────────────────────────────────────────────────────────────────────────

-- One side of a hand-over to, or from, a keeper on another node. The federated journals decide where the animal is; this is what
-- follows for the keeper of this node.
create table crossing (
    population_id  uuid        not null,
    -- of the hand-over between the nodes
    id             uuid        not null,
    -- whether this node gives it
    given          boolean     not null,
    -- at the receiver's once it arrived
    animal_id      uuid,
    -- as it is called between nodes
    federated_id   text        not null,
    -- id of the other node
    node           text        not null,
    kind           text        not null check (kind in ('sale', 'gift', 'exchange')),
    state          text        not null check (state in
                       ('offered', 'accepted', 'on-its-way', 'arrived', 'refused', 'withdrawn', 'expired')),
    -- from which it was offered, or into which it was accepted
    collection_id  uuid,
    -- that nobody acts for: where the animal stands here since it arrived elsewhere
    holder_id      uuid,
    -- of this node: who offered it, or to whom it is offered
    keeper_id      uuid        not null,
    -- sign-in name on the other node
    addressee      text,
    handed_over_on date,
    note           text,
    -- as the giver's node sent it, at the receiver's once it was accepted
    record         text,
    -- the entry of this node's own journal that holds it
    record_seq     bigint,
    -- where that stands in this node's federated journal, at the giver's
    told_seq       bigint,
    offered_at     timestamptz not null,
    expires_at     timestamptz not null,
    moved_at       timestamptz,
    ended_at       timestamptz,
    reason         text,
    revision       bigint      not null,
    primary key (population_id, id),
    foreign key (population_id, animal_id) references animal (population_id, id),
    foreign key (population_id, collection_id) references collection (population_id, id),
    foreign key (population_id, holder_id) references collection (population_id, id),
    check ((state in ('arrived', 'refused', 'withdrawn', 'expired')) = (ended_at is not null))
);
-- an animal is given to one other node at a time
create unique index crossing_open on crossing (population_id, animal_id) where given and state in ('offered', 'on-its-way');
create index crossing_animal on crossing (population_id, animal_id);
create index crossing_keeper on crossing (population_id, keeper_id);
create index crossing_collection on crossing (population_id, collection_id);

-- in exactly one collection, in exactly one transfer between two, or on its way to another node
alter table animal add column crossing_id uuid;
alter table animal add foreign key (population_id, crossing_id) references crossing (population_id, id);
alter table animal drop constraint animal_check;
alter table animal add check ((case when collection_id is null then 0 else 1 end)
    + (case when transfer_id is null then 0 else 1 end)
    + (case when crossing_id is null then 0 else 1 end) = 1);

grant select, insert, update, delete on crossing to ${app_role}, ${register_role};

-- the two sides know of it: here whoever acts for the collection that gives, and the keeper whom it is offered to
alter table crossing enable row level security;
create policy register on crossing to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on crossing for select to ${app_role} using (
    keeper_id = (select keeper_id from asking) and not given
    or collection_id = any ((select ids from own_collections)::uuid[]));

-- who gave an animal to another node knows who it is, as who sold it on this node does
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
    join transfer t on t.population_id = c.population_id and t.to_collection_id = c.collection_id
    union all
    select c.population_id, x.id, x.animal_id
    from asking_collection c
    join crossing x on x.population_id = c.population_id and x.collection_id = c.collection_id
    where x.animal_id is not null;
