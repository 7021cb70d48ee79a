-- From which entry on a journal's own node is still to be asked for what others gave as digests; 0: nowhere.
alter table federated_journal add column again bigint not null default 0 check (again >= 0);
