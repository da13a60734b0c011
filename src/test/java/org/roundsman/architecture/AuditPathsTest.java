package org.roundsman.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Every change through a page, the API or a service leaves an entry in the audit. A new method that changes something
 * fails here until it notes what it does, or stands in these lists with the reason why it need not.
 */
class AuditPathsTest {

    /** Requests that change nothing a person would ask about, each with its reason. */
    private static final Map<String, String> HARMLESS_REQUESTS = Map.of(
            "DevicePages.poll", "asks the device and stores a reading, as every round does",
            "CredentialTrials.tryOthers", "asks the device and changes nothing",
            "WiringPages.read", "asks devices what hangs on what, as the rounds do by themselves",
            "SignInPages.signOut", "ends a sign-in; sign-ins stand in the log",
            "FaultPages.switchOn", "switches faults of the invented fleet, in the demonstration only",
            "FaultPages.switchOff", "the same");

    /** Services whose writes are no changes by people, each with its reason. */
    private static final Map<String, String> HARMLESS_SERVICES = Map.of(
            "FactStore.store", "what devices say about themselves stands on the timeline",
            "FactStore.networkId", "a network that a device carries",
            "CredentialCare.onStart", "notes what is weak, changes no value",
            "SignIns.signOut", "ends a sign-in; sign-ins stand in the log",
            "Sessions.deleteOver", "deletes sign-ins that have run out",
            "TokenHolders.check", "notes when and from where a token was used",
            "TokenHolders.deleteOver", "deletes tokens that are long over");

    private static AuditPaths main;

    @BeforeAll
    static void read() {
        JavaClasses classes = new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages("org.roundsman");
        main = new AuditPaths(classes);
    }

    @Test
    void everyRequestThatChangesSomethingIsNoted() {
        Set<String> unheard = main.unheardRequests();
        assertThat(unheard).containsExactlyInAnyOrderElementsOf(HARMLESS_REQUESTS.keySet());
    }

    @Test
    void everyServiceThatChangesWhatPeopleEditNotesIt() {
        Set<String> unheard = main.unheardServices(
                type -> Set.of("org.roundsman.fleet", "org.roundsman.people").contains(type.getPackageName()));
        assertThat(unheard).containsExactlyInAnyOrderElementsOf(HARMLESS_SERVICES.keySet());
    }

    /** A rule that cannot fail is none. */
    @Test
    void whatWasPlantedIsFound() {
        JavaClasses planted =
                new ClassFileImporter().importPackages("quiet", "org.roundsman.audit", "org.roundsman.fleet");
        AuditPaths paths = new AuditPaths(planted);
        assertThat(paths.unheardRequests()).containsExactly("QuietPages.unheard");
        assertThat(paths.unheardServices(type -> type.getPackageName().equals("quiet")))
                .containsExactlyInAnyOrder(
                        "QuietService.unheardField", "QuietService.unheardRow", "QuietService.unheardStatement");
    }
}
