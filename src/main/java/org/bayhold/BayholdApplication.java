package org.bayhold;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.boot.context.properties.ConfigurationPropertiesScan;
import org.springframework.scheduling.annotation.EnableScheduling;

/** Starts Bayhold. */
@SpringBootApplication
@ConfigurationPropertiesScan
@EnableScheduling
public class BayholdApplication {
    public static void main(String[] args) {
        SpringApplication.run(BayholdApplication.class, args);
    }
}
