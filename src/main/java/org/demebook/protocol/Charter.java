package org.demebook.protocol;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;

/**
 * What a population is between nodes.
 *
 * @param code population code of its studbook numbers
 * @param description taxon, locality, profile, rules of disclosure: for people and programs beyond the protocol
 * @param seats in the order of the nodes' ids
 */
public record Charter(String code, ObjectNode description, List<Seat> seats) {
    /** @param code with which the node issues studbook numbers; no two are alike */
    public record Seat(String node, String code) {}

    public Charter {
        seats = List.copyOf(seats);
    }

    public boolean seats(String node) {
        return seat(node).isPresent();
    }

    public Optional<Seat> seat(String node) {
        return seats.stream().filter(seat -> seat.node().equals(node)).findFirst();
    }
}
