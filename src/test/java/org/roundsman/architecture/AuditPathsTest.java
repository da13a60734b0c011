package org.roundsman.architecture;

import static java.util.Map.entry;
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
    private static final Map<String, String> HARMLESS_REQUESTS = Map.ofEntries(
            entry("DevicePages.poll", "asks the device and stores a reading, as every round does"),
            entry("CredentialTrials.tryOthers", "asks the device and changes nothing"),
            entry("WiringPages.read", "asks devices what hangs on what, as the rounds do by themselves"),
            entry("WiringApi.readWiring", "the same"),
            entry("ProfileEditsApi.checkProfile", "says what is wrong with a text and keeps nothing"),
            entry("ImportPages.upload", "keeps a file to be looked at; nothing is taken from it yet"),
            entry("ImportPages.checkAgain", "looks at such a file once more"),
            entry("ImportPages.discard", "throws such a file away"),
            entry("ImportsApi.addImport", "keeps a file to be looked at; nothing is taken from it yet"),
            entry("ImportsApi.checkImport", "looks at such a file once more"),
            entry("ImportsApi.removeImport", "throws such a file away"),
            entry("PlannedEdits.preview", "shows when planned work would take place and keeps nothing"),
            entry("BenchPages.stop", "stops the reading of a walk"),
            entry("EditorPages.check", "says what is wrong with a text and keeps nothing"),
            entry("EditorPages.tryIt", "tries a text on a stored walk and keeps nothing"),
            entry("TryPages.tryIt", "tries values of a rule on what is stored and keeps nothing"),
            entry("TryPages.cancel", "stops such a try"),
            entry("WalkPages.proposed", "opens the editor with proposed lines and keeps nothing"),
            entry("SignInPages.signOut", "ends a sign-in; sign-ins stand in the log"),
            entry("FaultPages.switchOn", "switches faults of the invented fleet, in the demonstration only"),
            entry("FaultPages.switchOff", "the same"),
            entry("FaultPages.run", "the same"));

    /** Services whose writes are no changes by people, each with its reason. */
    private static final Map<String, String> HARMLESS_SERVICES = Map.ofEntries(
            entry("FactStore.store", "what devices say about themselves stands on the timeline"),
            entry("FactStore.networkId", "a network that a device carries"),
            entry("FleetImport.check", "keeps files to be looked at; nothing is taken from them yet"),
            entry("FleetImport.checkAgain", "looks at such files once more"),
            entry("FleetImport.discard", "throws such files away"),
            entry("FleetImport.find", "tells how far an import is, and marks one that was cut short"),
            entry("FleetImport.latest", "the same for several"),
            entry("FleetImport.rows", "the same with what each row would do"),
            entry("FleetImport.reasons", "the same, counted by reason"),
            entry("FleetImport.removeOld", "throws away files that nobody looked at for a day"),
            entry("CredentialCare.onStart", "notes what is weak, changes no value"),
            entry("SignIns.signOut", "ends a sign-in; sign-ins stand in the log"),
            entry("Sessions.deleteOver", "deletes sign-ins that have run out"),
            entry("TokenHolders.deleteOver", "deletes tokens that are long over"));

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
                type -> Set.of("org.roundsman.fleet", "org.roundsman.people", "org.roundsman.planned")
                        .contains(type.getPackageName()));
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
