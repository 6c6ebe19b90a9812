package org.bayhold;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;

/** Starts Bayhold. */
@SpringBootApplication
public class BayholdApplication {
    public static void main(String[] args) {
        SpringApplication.run(BayholdApplication.class, args);
    }
}
