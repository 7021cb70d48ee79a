package org.demebook.registry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Who descends from whom, walked in the database: candidates count as parents, merged records as one animal. */
@ApplicationScoped
class Lineage {
    private static final String PATH_UP = """
            with recursive parent_of (child, parent) as (
                select coalesce(c.same_as_id, c.id), coalesce(p.same_as_id, p.id)
                from demebook.animal c
                join demebook.animal p on p.population_id = c.population_id and p.id in (c.dam_id, c.sire_id)
                where c.population_id = :population
                union all
                select coalesce(c.same_as_id, c.id), coalesce(p.same_as_id, p.id)
                from demebook.candidate_sire s
                join demebook.animal c on c.population_id = s.population_id and c.id = s.animal_id
                join demebook.animal p on p.population_id = s.population_id and p.id = s.sire_id
                where s.population_id = :population
            ),
            walk (id, path) as (
                select coalesce(a.same_as_id, a.id), array[coalesce(a.same_as_id, a.id)]
                from demebook.animal a
                where a.population_id = :population and a.id in (:from)
                union all
                select e.parent, w.path || e.parent
                from walk w
                join parent_of e on e.child = w.id
                where not e.parent = any (w.path) and not w.id = :to
            )
            cycle id set looped using trail
            select (select string_agg(a.number, ' < ' order by step.place)
                    from unnest(walk.path) with ordinality as step (id, place)
                    join demebook.animal a on a.population_id = :population and a.id = step.id)
            from walk
            where walk.id = :to
            order by array_length(walk.path, 1)
            limit 1
            """;

    @Inject
    EntityManager entities;

    /**
     * The shortest way up from any of the given animals to an ancestor, as studbook numbers from young to old; empty when
     * there is none. An animal is on its own way.
     */
    Optional<List<String>> wayUp(UUID populationId, Collection<UUID> from, UUID toAncestor) {
        if (from.isEmpty()) {
            return Optional.empty();
        }
        return entities.createNativeQuery(PATH_UP, String.class)
                .setParameter("population", populationId)
                .setParameter("from", from)
                .setParameter("to", toAncestor)
                .getResultStream()
                .map(path -> Arrays.asList(((String) path).split(" < ")))
                .findFirst();
    }
}
