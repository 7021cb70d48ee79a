-- ── populations shared between nodes ─────────────────────────────────────────────────────────────────────────────────

-- What this node's own journal says of them: these follow from its facts, as everything else does.

create table federated_population (
    population_id uuid not null,
    -- id of the node whose charter holds
    founder       text not null check (length(founder) = 43),
    primary key (population_id),
    foreign key (population_id) references journal_head (population_id)
);

-- nodes that are neither followed nor waited for
create table federated_aside (
    population_id uuid not null,
    node_id       text not null check (length(node_id) = 43),
    primary key (population_id, node_id),
    foreign key (population_id) references federated_population (population_id)
);

-- how animals of this register are called between nodes: uuid@node that registered
create table federated_animal (
    population_id uuid not null,
    animal_id     uuid not null,
    federated_id  text not null,
    primary key (population_id, animal_id),
    foreign key (population_id, animal_id) references animal (population_id, id)
);
create unique index federated_animal_id on federated_animal (population_id, federated_id);

-- ── the federated journals ───────────────────────────────────────────────────────────────────────────────────────────

-- What nodes signed, this one among them. It follows from nobody's facts here: it is kept as it came, each journal checked against its head.

-- one row a population, locked by whoever changes anything of what is below
create table federated_store (
    population_id uuid   not null,
    -- grows with every change
    version       bigint not null,
    primary key (population_id),
    foreign key (population_id) references journal_head (population_id)
);

create table federated_journal (
    population_id uuid   not null,
    node_id       text   not null check (length(node_id) = 43),
    -- how many entries there are
    size          bigint not null,
    -- the last checked head with its cosignatures, a signed note; null as long as none was seen
    head          text,
    primary key (population_id, node_id),
    foreign key (population_id) references journal_head (population_id)
);

-- Append-only but for one thing: entry and salt can be blanked when what they tell is withdrawn. The digest stays, and the tree with it.
create table federated_entry (
    population_id uuid   not null,
    node_id       text   not null,
    seq           bigint not null,
    digest        bytea  not null check (length(digest) = 32),
    -- the compact form, the very bytes that were signed; null: not for this node, or erased
    entry         bytea,
    salt          bytea  check (length(salt) = 32),
    -- of an own entry: ids of the nodes that may read it; null: all
    readers       text[],
    primary key (population_id, node_id, seq),
    foreign key (population_id, node_id) references federated_journal (population_id, node_id),
    check ((entry is null) = (salt is null))
);

-- heads beyond the copies here, to be held against them later
create table federated_unchecked (
    population_id uuid    not null,
    node_id       text    not null,
    place         integer not null,
    head          text    not null,
    primary key (population_id, node_id, place),
    foreign key (population_id) references journal_head (population_id)
);

create table federation_alarm (
    population_id uuid        not null,
    -- SHA-256 of what it is about
    id            text        not null,
    kind          text        not null,
    accused       text        not null,
    -- canonical JSON; null where there is no more than this node's word
    evidence      text,
    sentence      text        not null,
    noticed_at    timestamptz not null,
    primary key (population_id, id),
    foreign key (population_id) references journal_head (population_id)
);

grant select, insert, update, delete on federated_population, federated_aside, federated_animal, federated_store, federated_journal,
    federated_unchecked to ${app_role}, ${register_role};
grant select, insert on federated_entry, federation_alarm to ${app_role}, ${register_role};
grant update (entry, salt) on federated_entry to ${app_role}, ${register_role};

-- Entries hold what was told to this node alone, and alarms carry entries: only the register reads them. Which animal is which between nodes, too.
alter table federated_entry enable row level security;
create policy register on federated_entry to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
alter table federation_alarm enable row level security;
create policy register on federation_alarm to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
alter table federated_animal enable row level security;
create policy register on federated_animal to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
