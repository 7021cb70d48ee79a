-- ── other nodes ──────────────────────────────────────────────────────────────────────────────────────────────────────

-- Whom an administrator admitted by comparing fingerprints. Of the node, like its accounts: it belongs to no population, stands in
-- no journal and tells of no animal.
create table peer (
    node_id         text        not null check (length(node_id) = 43),
    name            text        not null,
    -- as the administrator typed it; nothing that a peer says changes it
    address         text        not null,
    tls_pin         text        not null check (length(tls_pin) = 43),
    -- its chain of keys, in canonical JSON
    keys            text        not null,
    admitted_at     timestamptz not null,
    admitted_by     uuid        not null,
    state           text        not null check (state in ('active', 'set-aside')),
    last_contact_at timestamptz,
    last_trouble    text,
    primary key (node_id)
);
grant select, insert, update, delete on peer to ${app_role}, ${register_role};
