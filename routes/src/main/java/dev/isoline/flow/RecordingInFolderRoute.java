package dev.isoline.flow;

import dev.isoline.recordings.WatchedFolder;
import dev.isoline.settings.IsolineProperties;
import org.apache.camel.builder.RouteBuilder;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.stereotype.Component;

/** Flow 3, docs/flows/03-recording-in.md: a recorder station drops recordings into a folder. */
@Component
@ConditionalOnProperty("isoline.recordings.watch")
public final class RecordingInFolderRoute extends RouteBuilder {

    public static final String ID = "recording-in-folder";

    private final IsolineProperties properties;
    private final WatchedFolder folder;

    public RecordingInFolderRoute(IsolineProperties properties, WatchedFolder folder) {
        this.properties = properties;
        this.folder = folder;
    }

    @Override
    public void configure() {
        from("timer:" + ID + "?period=" + properties.recordings().sweep().toMillis())
                .routeId(ID)
                .bean(folder, "sweep");
    }
}
