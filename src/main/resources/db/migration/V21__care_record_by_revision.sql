-- What was written last is taken back by the entries of the journal that wrote it.
create index care_record_revision on care_record (population_id, revision);
