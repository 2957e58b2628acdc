package dev.isoline.dimse;

import dev.isoline.dicom.spi.Admission;
import dev.isoline.dicom.spi.AeTitle;
import dev.isoline.dicom.spi.Tls;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.camel.spi.Metadata;
import org.apache.camel.spi.UriParam;
import org.apache.camel.spi.UriParams;
import org.apache.camel.spi.UriPath;

/** The options of a {@code dimse:} URI; docs/dimse-component.md shows them in use. */
@UriParams
public class DimseConfiguration {

    @UriPath
    @Metadata(required = true, description = "Where the application entity is.")
    private String host;

    @UriPath
    @Metadata(required = true, description = "Its TCP port; a consumer's 0: any free one.")
    private int port;

    @UriParam
    @Metadata(required = true, description = "Title of the application entity at that address.")
    private String title;

    @UriParam
    @Metadata(required = true, description = "ECHO, STORE, FIND or COMMITMENT.")
    private DimseService service;

    @UriParam(label = "producer", defaultValue = "ISOLINE", description = "What we call ourselves.")
    private String calling = "ISOLINE";

    @UriParam(description = "SOP classes of STORE and FIND, separated by commas.")
    private String sopClasses = "";

    @UriParam(label = "consumer", description = "Folder that objects are streamed into.")
    private String folder = "";

    @UriParam(
            label = "consumer",
            description = "Calling titles that are let in, separated by commas; empty: all.")
    private String callers = "";

    @UriParam(
            label = "consumer",
            description = "Titles it answers to beside its own, separated by commas.")
    private String otherTitles = "";

    @UriParam(label = "consumer", defaultValue = "16", description = "Associations at a time.")
    private int associations = 16;

    @UriParam(
            label = "producer",
            defaultValue = "0s",
            description = "How long to wait for a commitment's result on the same association.")
    private Duration linger = Duration.ZERO;

    @UriParam(
            defaultValue = "2m",
            description = "How long the other side may be silent while it owes us something.")
    private Duration response = Duration.ofMinutes(2);

    @UriParam(
            label = "consumer",
            defaultValue = "5m",
            description = "How long an association may be idle.")
    private Duration idle = Duration.ofMinutes(5);

    @UriParam(
            defaultValue = "262144",
            description = "Longest P-DATA-TF we announce, in bytes; 0: no limit.")
    private int receivePdu = 256 * 1024;

    @UriParam(
            defaultValue = "0",
            description = "Longest P-DATA-TF we send; 0: what the other side announces.")
    private int sendPdu;

    @UriParam(description = "Reference to a Tls (dev.isoline.dicom.spi); none: plain TCP.")
    private Tls tls;

    /** Reads {@code host:port}. */
    void address(String remaining) {
        int colon = remaining.lastIndexOf(':');
        if (colon < 1) {
            throw new IllegalArgumentException("dimse: needs host:port, not " + remaining);
        }
        host = remaining.substring(0, colon);
        port = Integer.parseInt(remaining.substring(colon + 1));
    }

    /** The title at the address. */
    AeTitle at() {
        return new AeTitle(title);
    }

    List<String> sopClassList() {
        return parts(sopClasses).toList();
    }

    /** Whom it lets in, and by which titles it may be called. */
    Admission admission() {
        return new Admission(titles(callers), titles(otherTitles), false, associations);
    }

    private static Set<AeTitle> titles(String list) {
        return parts(list).map(AeTitle::new).collect(Collectors.toSet());
    }

    Optional<Tls> security() {
        return Optional.ofNullable(tls);
    }

    private static Stream<String> parts(String list) {
        return Arrays.stream(list.split(",")).map(String::strip).filter(s -> !s.isEmpty());
    }

    public String getHost() {
        return host;
    }

    public int getPort() {
        return port;
    }

    public String getTitle() {
        return title;
    }

    public void setTitle(String title) {
        this.title = title;
    }

    public DimseService getService() {
        return service;
    }

    public void setService(DimseService service) {
        this.service = service;
    }

    public String getCalling() {
        return calling;
    }

    public void setCalling(String calling) {
        this.calling = calling;
    }

    public String getSopClasses() {
        return sopClasses;
    }

    public void setSopClasses(String sopClasses) {
        this.sopClasses = sopClasses;
    }

    public String getFolder() {
        return folder;
    }

    public void setFolder(String folder) {
        this.folder = folder;
    }

    public String getCallers() {
        return callers;
    }

    public void setCallers(String callers) {
        this.callers = callers;
    }

    public String getOtherTitles() {
        return otherTitles;
    }

    public void setOtherTitles(String otherTitles) {
        this.otherTitles = otherTitles;
    }

    public int getAssociations() {
        return associations;
    }

    public void setAssociations(int associations) {
        this.associations = associations;
    }

    public Duration getLinger() {
        return linger;
    }

    public void setLinger(Duration linger) {
        this.linger = linger;
    }

    public Duration getResponse() {
        return response;
    }

    public void setResponse(Duration response) {
        this.response = response;
    }

    public Duration getIdle() {
        return idle;
    }

    public void setIdle(Duration idle) {
        this.idle = idle;
    }

    public int getReceivePdu() {
        return receivePdu;
    }

    public void setReceivePdu(int receivePdu) {
        this.receivePdu = receivePdu;
    }

    public int getSendPdu() {
        return sendPdu;
    }

    public void setSendPdu(int sendPdu) {
        this.sendPdu = sendPdu;
    }

    public Tls getTls() {
        return tls;
    }

    public void setTls(Tls tls) {
        this.tls = tls;
    }
}
