package org.roundsman.web.profiles;

import jakarta.enterprise.context.RequestScoped;
import jakarta.ws.rs.NotFoundException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.roundsman.profiles.ProfileVersion;
import org.roundsman.profiles.Proposal;
import org.roundsman.profiles.StoredWalk;
import org.roundsman.profiles.Workbench;
import org.roundsman.profiles.WrittenProfiles;
import org.roundsman.snmp.ProfileSet;
import org.roundsman.snmp.UnusedGroup;

/** From objects of a walk, and what a person says they are, to lines of a profile. */
@RequestScoped
class Proposing {

    private final Workbench bench;
    private final WrittenProfiles written;
    private final Editing editing;
    private final Writer writer;

    Proposing(Workbench bench, WrittenProfiles written, Editing editing, Writer writer) {
        this.bench = bench;
        this.written = written;
        this.editing = editing;
        this.writer = writer;
    }

    boolean writes() {
        return writer.writes();
    }

    WalkPages.ProposeView view(StoredWalk walk, String oid) {
        UnusedGroup group = bench.group(walk, oid).orElseThrow(NotFoundException::new);
        List<Integer> parts = new ArrayList<>();
        if (!group.indexes().isEmpty()) {
            int count = Math.min(4, group.indexes().get(0).split("\\.").length);
            for (int i = 1; i <= count; i++) {
                parts.add(i);
            }
        }
        List<String> keys = group.table()
                ? ProfileSet.measurable()
                : ProfileSet.measurable().stream()
                        .filter(key -> key.startsWith("device.") || key.startsWith("fact."))
                        .toList();
        return new WalkPages.ProposeView(
                walk, group, parts, String.join("; ", group.indexes()), keys, ProfileSet.forms(), written.all());
    }

    /** The editor, with the lines in a new profile or in the latest version of one. */
    EditorView editor(StoredWalk walk, ProposeForm form) {
        UnusedGroup group =
                bench.group(walk, form.group() == null ? "" : form.group()).orElseThrow(NotFoundException::new);
        List<String> index = form.index() == null || form.index().isEmpty() ? List.of("radio") : form.index();
        String lines = group.table()
                ? Proposal.table(group, index, form.meanings())
                : Proposal.scalars(group, form.meanings());
        String section = group.table() ? "tables" : "scalars";
        String id = String.valueOf(walk.id());
        Optional<ProfileVersion> latest =
                written.versions(form.intoId()).stream().findFirst();
        if (latest.isPresent()) {
            ProfileVersion version = latest.get();
            return editing.view(new EditorForm(
                    String.valueOf(version.profileId()),
                    Proposal.insert(version.text(), section, lines),
                    "",
                    String.valueOf(version.number()),
                    id));
        }
        String kind = List.of("switch", "gateway").contains(form.kind()) ? form.kind() : "access point";
        String text = Proposal.insert(Proposal.skeleton("my-maker", walk.objectId(), kind), section, lines);
        return editing.view(EditorForm.fresh(text, walk.id()));
    }
}
