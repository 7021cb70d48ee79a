-- The regions by which an association counts: names that it fixed, in its order. The coarsest place there is; no nearer one is asked for.
create table region_list (
    population_id uuid   not null,
    names         text[] not null,
    revision      bigint not null,
    primary key (population_id),
    foreign key (population_id) references journal_head (population_id)
);
grant select, insert, update, delete on region_list to ${app_role}, ${register_role};

-- The one that a collection states; nothing where it states none.
alter table collection add column region text;
