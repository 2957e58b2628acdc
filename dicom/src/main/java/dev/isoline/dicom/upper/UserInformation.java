package dev.isoline.dicom.upper;

import dev.isoline.dicom.Part10;
import java.util.List;

/**
 * User information item of an association, PS3.8 annex D and PS3.7 D.3.3. Asynchronous operations
 * are not offered, extended negotiation and user identity not answered: each is optional to answer.
 *
 * @param maxLength maximum length of the variable field of a P-DATA-TF its sender receives; 0 no
 *     limit
 * @param implementationClass Implementation Class UID; empty where it was not given
 * @param implementationVersion Implementation Version Name; empty where it was not given
 * @param roles SCP/SCU role selection
 */
public record UserInformation(
        int maxLength,
        String implementationClass,
        String implementationVersion,
        List<RoleSelection> roles) {

    public UserInformation {
        roles = List.copyOf(roles);
    }

    /** Ours. */
    public static UserInformation ours(int maxLength, List<RoleSelection> roles) {
        return new UserInformation(
                maxLength, Part10.IMPLEMENTATION_CLASS, Part10.IMPLEMENTATION_VERSION, roles);
    }

    /**
     * SCP/SCU role selection, PS3.7 D.3.3.4.
     *
     * @param scu the requestor is, or may be, SCU
     * @param scp the requestor is, or may be, SCP
     */
    public record RoleSelection(String sopClass, boolean scu, boolean scp) {}
}
