package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;

/**
 * Order numbers and who gave them, of the Imaging Service Request Module, PS3.3 C.4.12: no module
 * of a waveform IOD, but allowed as a Standard Extended SOP Class (PS3.2 3.11.5) and what links the
 * object to its order.
 */
public final class RequestedOrderModule {

    private RequestedOrderModule() {}

    public static DataSet of(CompositeObject object) {
        var order = object.order();
        return new ModuleWriter("Imaging Service Request (PS3.3 C.4.12)")
                .type3(Tag.PlacerOrderNumberImagingServiceRequest, order.placer().value())
                .type3(Tag.OrderPlacerIdentifierSequence, CodeItems.issuer(order.placer()))
                .type3(Tag.FillerOrderNumberImagingServiceRequest, order.filler().value())
                .type3(Tag.OrderFillerIdentifierSequence, CodeItems.issuer(order.filler()))
                .dataSet();
    }
}
