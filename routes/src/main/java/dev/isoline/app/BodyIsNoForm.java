package dev.isoline.app;

import org.springframework.boot.web.embedded.tomcat.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.stereotype.Component;

/**
 * Leaves the body of a request to its handler. Tomcat would take one that calls itself a form for
 * parameters and use it up; curl's {@code --data-binary} calls every file a form.
 */
@Component
class BodyIsNoForm implements WebServerFactoryCustomizer<TomcatServletWebServerFactory> {

    @Override
    public void customize(TomcatServletWebServerFactory factory) {
        factory.addConnectorCustomizers(connector -> connector.setParseBodyMethods(""));
    }
}
