-- ── what other nodes are told ────────────────────────────────────────────────────────────────────────────────────────

-- Which entries of this node's federated journal tell of an animal and stand, and to whom. It follows from that journal and from what is
-- granted, and from no fact of the register's own: whoever looks next makes it right.
create table telling (
    population_id uuid   not null,
    seq           bigint not null,
    -- SHA-256 of what is said
    digest        text   not null check (length(digest) = 64),
    -- ids of the nodes that may read it; null where that is not known any more
    readers       text,
    primary key (population_id, seq),
    foreign key (population_id) references journal_head (population_id)
);

-- By what other nodes tell the collections of this one apart. Drawn by chance.
create table custodian (
    population_id uuid not null,
    collection_id uuid not null,
    pseudonym     text not null,
    primary key (population_id, collection_id),
    foreign key (population_id, collection_id) references collection (population_id, id)
);

grant select, insert, update, delete on telling, custodian to ${app_role}, ${register_role};

-- Whose pseudonym is which is nobody's to read.
alter table custodian enable row level security;
create policy register on custodian to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
alter table telling enable row level security;
create policy register on telling to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
