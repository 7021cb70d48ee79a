package org.demebook.registry;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.util.UUID;
import org.demebook.notation.StudbookNumber;
import org.jspecify.annotations.Nullable;

/** The last serial of the studbook numbers that a node gave in a population. Moves only under the population's lock. */
@Entity
@Table(name = "serial_counter")
@IdClass(SerialCounter.Key.class)
class SerialCounter extends PanacheEntityBase {
    record Key(UUID populationId, String nodeCode) {}

    @Id
    UUID populationId;

    @Id
    String nodeCode;

    long lastSerial;

    protected SerialCounter() {}

    static long last(UUID populationId, String nodeCode) {
        SerialCounter counter = of(populationId, nodeCode);
        return counter == null ? 0 : counter.lastSerial;
    }

    static void reached(UUID populationId, StudbookNumber number) {
        SerialCounter counter = of(populationId, number.nodeCode());
        if (counter == null) {
            counter = new SerialCounter();
            counter.populationId = populationId;
            counter.nodeCode = number.nodeCode();
            counter.lastSerial = number.serial();
            counter.persist();
        }
        counter.lastSerial = Math.max(counter.lastSerial, number.serial());
    }

    private static @Nullable SerialCounter of(UUID populationId, String nodeCode) {
        return findById(new Key(populationId, nodeCode));
    }
}
