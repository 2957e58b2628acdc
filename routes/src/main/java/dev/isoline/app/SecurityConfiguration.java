package dev.isoline.app;

import dev.isoline.settings.IsolineProperties;
import java.util.ArrayList;
import java.util.List;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.security.authentication.AuthenticationManager;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.SecurityFilterChain;

/** HTTP needs a credential from the first start; only the health probes do not. */
@Configuration
class SecurityConfiguration {

    private static final String OPERATOR = "operator";

    @Bean
    Credentials credentials(IsolineProperties properties) {
        var names = new ArrayList<String>();
        names.add(OPERATOR);
        names.addAll(properties.clients());
        names.addAll(properties.senders().keySet());
        return Credentials.open(properties.data().resolve("credentials"), names);
    }

    @Bean
    AuthenticationManager authenticationManager(Credentials credentials) {
        return attempt -> authenticated(credentials, attempt);
    }

    @Bean
    SecurityFilterChain security(
            HttpSecurity http, AuthenticationManager manager, AuthenticationEntryPoint unauthorized)
            throws Exception {
        return http.authenticationManager(manager)
                .authorizeHttpRequests(
                        paths ->
                                paths.requestMatchers("/actuator/health/**")
                                        .permitAll()
                                        .anyRequest()
                                        .authenticated())
                .httpBasic(basic -> basic.authenticationEntryPoint(unauthorized))
                .exceptionHandling(e -> e.authenticationEntryPoint(unauthorized))
                .sessionManagement(s -> s.sessionCreationPolicy(SessionCreationPolicy.STATELESS))
                .csrf(AbstractHttpConfigurer::disable)
                .formLogin(AbstractHttpConfigurer::disable)
                .logout(AbstractHttpConfigurer::disable)
                .requestCache(AbstractHttpConfigurer::disable)
                .build();
    }

    private static Authentication authenticated(Credentials credentials, Authentication attempt) {
        String name = attempt.getName();
        if (!credentials.accept(name, String.valueOf(attempt.getCredentials()))) {
            throw new BadCredentialsException("Unknown name or wrong token");
        }
        return UsernamePasswordAuthenticationToken.authenticated(name, null, List.of());
    }
}
