package dev.isoline.fhirapi.definitions;

import java.util.function.Supplier;
import org.hl7.fhir.r5.model.StructureDefinition;

/**
 * A definition of a structure whose elements are read when somebody asks for them. The validator
 * goes through all definitions to find one by its name and looks into very few.
 */
final class UnreadStructure extends StructureDefinition {

    private static final long serialVersionUID = 1;

    private transient Supplier<StructureDefinition> whole;

    UnreadStructure(StructureDefinition header, Supplier<StructureDefinition> whole) {
        header.copyValues(this);
        setSourcePackage(header.getSourcePackage());
        this.whole = whole;
    }

    private synchronized void read() {
        if (whole != null) {
            StructureDefinition definition = whole.get();
            whole = null;
            setSnapshot(definition.getSnapshot());
            setDifferential(definition.getDifferential());
        }
    }

    @Override
    public StructureDefinitionSnapshotComponent getSnapshot() {
        read();
        return super.getSnapshot();
    }

    @Override
    public boolean hasSnapshot() {
        read();
        return super.hasSnapshot();
    }

    @Override
    public StructureDefinitionDifferentialComponent getDifferential() {
        read();
        return super.getDifferential();
    }

    @Override
    public boolean hasDifferential() {
        read();
        return super.hasDifferential();
    }

    @Override
    public void copyValues(StructureDefinition copy) {
        read();
        super.copyValues(copy);
    }
}
