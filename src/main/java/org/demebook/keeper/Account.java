package org.demebook.keeper;

import io.quarkus.elytron.security.common.BcryptUtil;
import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.util.UUID;

/** A keeper's password on this node, as bcrypt. There is none where another service signs keepers in. */
@Entity
@Table(name = "account")
class Account extends PanacheEntityBase {
    @Id
    UUID keeperId;

    String passwordHash;

    protected Account() {}

    Account(UUID keeperId, String password) {
        this.keeperId = keeperId;
        this.passwordHash = BcryptUtil.bcryptHash(password);
    }
}
