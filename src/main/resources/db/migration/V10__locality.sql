-- What is claimed of an animal's locality; nothing where nobody said more than that it is of its population.
alter table animal add column locality text;
alter table animal add column locality_certainty text
    check (locality_certainty in ('documented', 'stated', 'doubtful', 'unknown'));
alter table animal add column locality_seq bigint;
