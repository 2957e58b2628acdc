package dev.isoline.dicom.spi;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What a listener serves. A SOP class without a provider is not accepted: result 3,
 * abstract-syntax-not-supported, PS3.8 table 9-18.
 *
 * @param verification answers C-ECHO
 * @param storage takes objects, by SOP class
 * @param find answers queries, by SOP class
 * @param commitment the archive's side of storage commitment
 * @param commitmentResults takes the results of our own requests; the requestor is the SCP then
 * @param observer is told of every association
 */
public record Services(
        Optional<VerificationProvider> verification,
        Map<String, StorageProvider> storage,
        Map<String, FindProvider> find,
        Optional<CommitmentProvider> commitment,
        Optional<CommitmentResults> commitmentResults,
        AssociationObserver observer) {

    private static final AssociationObserver NOBODY = new AssociationObserver() {};

    public Services {
        storage = Map.copyOf(storage);
        find = Map.copyOf(find);
    }

    /** C-ECHO and nothing else. */
    public static Services echoing() {
        return new Services(
                Optional.of(VerificationProvider.ALWAYS),
                Map.of(),
                Map.of(),
                Optional.empty(),
                Optional.empty(),
                NOBODY);
    }

    /** With C-STORE of these SOP classes too. */
    public Services storing(Collection<String> sopClasses, StorageProvider provider) {
        var all = new LinkedHashMap<>(storage);
        sopClasses.forEach(sopClass -> all.put(sopClass, provider));
        return new Services(verification, all, find, commitment, commitmentResults, observer);
    }

    /** With C-FIND of this SOP class too. */
    public Services finding(String sopClass, FindProvider provider) {
        var all = new LinkedHashMap<>(find);
        all.put(sopClass, provider);
        return new Services(verification, storage, all, commitment, commitmentResults, observer);
    }

    /** With storage commitment, as the archive. */
    public Services committing(CommitmentProvider provider) {
        return new Services(
                verification, storage, find, Optional.of(provider), commitmentResults, observer);
    }

    /** With results of storage commitment, as who asked the archive. */
    public Services takingResults(CommitmentResults results) {
        return new Services(
                verification, storage, find, commitment, Optional.of(results), observer);
    }

    /** With somebody who is told. */
    public Services observedBy(AssociationObserver other) {
        return new Services(verification, storage, find, commitment, commitmentResults, other);
    }
}
