package dev.isoline.fhirapi;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Every access to patient data is an audit event, read here by SQL and not through the ledger. */
class AuditTest extends RunningGateway {

    @Test
    void reads_writes_searches_and_refusals_are_recorded_without_a_name() throws SQLException {
        String number = Sample.number();
        String id =
                client().create().resource(Sample.patient(number)).execute().getId().getIdPart();
        send("GET", "/fhir/Patient/" + id, null);
        send("GET", "/fhir/Patient?identifier=" + number, null);
        send("GET", "/fhir/Patient/not-there", null);

        String patient = "Patient/" + id;
        assertThat(events())
                .contains(
                        "sable-point fhir POST " + patient + " 201",
                        "sable-point fhir GET " + patient + " 200",
                        "sable-point fhir GET Patient 200",
                        "sable-point fhir GET Patient/not-there 404")
                .noneMatch(e -> e.contains(number));
    }

    @Test
    void a_transaction_names_every_resource_it_wrote() throws SQLException {
        var response =
                client().transaction().withBundle(Sample.transaction(Sample.number())).execute();
        List<String> events = events();
        response.getEntry()
                .forEach(
                        e ->
                                assertThat(events)
                                        .contains(
                                                "sable-point fhir POST "
                                                        + e.getResponse()
                                                                .getLocation()
                                                                .replaceAll("/_history/.*", "")
                                                        + " 200"));
    }

    private static List<String> events() throws SQLException {
        var events = new ArrayList<String>();
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + ledgerFile());
                var rows =
                        connection
                                .createStatement()
                                .executeQuery("select actor, action, entity, outcome from audit")) {
            while (rows.next()) {
                events.add(
                        String.join(
                                " ",
                                rows.getString(1),
                                rows.getString(2),
                                rows.getString(3),
                                rows.getString(4)));
            }
        }
        return events;
    }
}
