package org.bayhold.identity;

import static org.bayhold.identity.Role.ADMINISTRATOR;
import static org.bayhold.identity.Role.AUDITOR;
import static org.bayhold.identity.Role.CALIBRATOR;
import static org.bayhold.identity.Role.MANAGER;
import static org.bayhold.identity.Role.TECHNICIAN;
import static org.bayhold.identity.Role.WRITER;

import java.util.Set;

/** What can be done, and who may: the one table of roles. docs/rules.md, "Who may do what". */
public enum Act {
    READ(WRITER, TECHNICIAN, CALIBRATOR, MANAGER, AUDITOR),
    SEE_CONTACTS(WRITER, CALIBRATOR, MANAGER),
    RECORD_ON_CAR(WRITER, TECHNICIAN, CALIBRATOR, MANAGER),
    ADVISE(WRITER, TECHNICIAN, CALIBRATOR, MANAGER),
    PLAN_RETUNE(WRITER, TECHNICIAN, CALIBRATOR, MANAGER),
    ADD_PART_SPEC(WRITER, TECHNICIAN, CALIBRATOR, MANAGER),
    CORRECT_PART_SPEC(CALIBRATOR, MANAGER),
    FLASH_AND_READ_BACK(TECHNICIAN, CALIBRATOR, MANAGER),
    ISSUE_CALIBRATION(CALIBRATOR, MANAGER),
    CLEAR_RETUNE(CALIBRATOR, MANAGER),
    HAND_OVER(WRITER, MANAGER),
    RELEASE_BY_EXCEPTION(MANAGER),
    STRIKE_OUT(MANAGER),
    SET_POLICY(MANAGER),
    AUDIT(MANAGER, AUDITOR),
    OWN_TOKENS(WRITER, TECHNICIAN, CALIBRATOR, MANAGER, AUDITOR, ADMINISTRATOR),
    MANAGE_USERS(ADMINISTRATOR);

    @SuppressWarnings("ImmutableEnumChecker") // Set.of
    private final Set<Role> allowed;

    Act(Role... allowed) {
        this.allowed = Set.of(allowed);
    }

    public boolean allowedTo(Set<Role> roles) {
        return roles.stream().anyMatch(allowed::contains);
    }
}
