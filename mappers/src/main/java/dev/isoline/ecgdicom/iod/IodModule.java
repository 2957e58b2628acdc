package dev.isoline.ecgdicom.iod;

import dev.isoline.dicom.DataSet;
import java.util.List;
import java.util.function.Function;

/**
 * One row of an IOD's table of modules, PS3.3 A.1.3.
 *
 * @param usage whether an object has to have it
 * @param writer its attributes; empty where there is nothing to say
 */
record IodModule<T>(Usage usage, Function<? super T, DataSet> writer) {

    enum Usage {
        MANDATORY,
        CONDITIONAL,
        USER_OPTION,
        /** Attributes of another IOD: a Standard Extended SOP Class, PS3.2 3.11.5. */
        EXTENSION
    }

    static <T> IodModule<T> mandatory(Function<? super T, DataSet> writer) {
        return new IodModule<>(Usage.MANDATORY, writer);
    }

    static <T> IodModule<T> conditional(Function<? super T, DataSet> writer) {
        return new IodModule<>(Usage.CONDITIONAL, writer);
    }

    static <T> IodModule<T> userOption(Function<? super T, DataSet> writer) {
        return new IodModule<>(Usage.USER_OPTION, writer);
    }

    static <T> IodModule<T> extension(Function<? super T, DataSet> writer) {
        return new IodModule<>(Usage.EXTENSION, writer);
    }

    /**
     * @param module of user option, for which nothing is known here
     */
    static <T> IodModule<T> notWritten(String module) {
        return new IodModule<>(Usage.USER_OPTION, object -> new DataSet());
    }

    static <T> DataSet write(List<IodModule<T>> modules, T object) {
        var dataSet = new DataSet();
        for (IodModule<T> module : modules) {
            DataSet attributes = module.writer().apply(object);
            if (module.usage() == Usage.MANDATORY && attributes.elements().isEmpty()) {
                throw new IllegalStateException("a mandatory module is empty");
            }
            dataSet.putAll(attributes);
        }
        return dataSet;
    }
}
