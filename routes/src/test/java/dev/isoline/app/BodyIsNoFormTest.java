package dev.isoline.app;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.servlet.http.HttpServlet;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import org.junit.jupiter.api.Test;
import org.springframework.boot.web.embedded.tomcat.TomcatServletWebServerFactory;

/** What {@code curl --data-binary @recording} sends: a file that calls itself a form. */
class BodyIsNoFormTest {

    @Test
    void a_file_that_calls_itself_a_form_reaches_its_handler_whole() throws Exception {
        var factory = new TomcatServletWebServerFactory(0);
        new BodyIsNoForm().customize(factory);
        var server =
                factory.getWebServer(
                        context -> context.addServlet("echo", new Echo()).addMapping("/"));
        server.start();
        try {
            assertThat(posted(server.getPort())).isEqualTo("HB-1001 order=0&bytes");
        } finally {
            server.stop();
        }
    }

    private static String posted(int port) throws IOException, InterruptedException {
        var request =
                HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/?order=HB-1001"))
                        .header("Content-Type", "application/x-www-form-urlencoded")
                        .POST(HttpRequest.BodyPublishers.ofString("order=0&bytes"))
                        .build();
        return HttpClient.newHttpClient().send(request, BodyHandlers.ofString()).body();
    }

    /** Asks for a parameter first, as Spring does, then reads the body. */
    private static final class Echo extends HttpServlet {

        private static final long serialVersionUID = 1;

        @Override
        protected void doPost(HttpServletRequest request, HttpServletResponse response)
                throws IOException {
            response.getWriter().print(request.getParameter("order") + " ");
            response.getWriter().print(new String(request.getInputStream().readAllBytes()));
        }
    }
}
