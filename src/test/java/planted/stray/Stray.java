package planted.stray;

import java.time.Instant;

/** Planted: a package that no table names, sleeping, talking and reading the wall clock. */
public final class Stray {

    public Instant all() throws InterruptedException {
        Thread.sleep(1);
        System.out.println(System.currentTimeMillis());
        return Instant.now();
    }
}
