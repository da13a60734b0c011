package org.roundsman.web.triage;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.core.Response;
import org.roundsman.fleet.InputRejected;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** The page again, with what was wrong in a form. */
@ApplicationScoped
class RefusedActs {

    private static final int UNPROCESSABLE = 422;

    private final TriageLists lists;
    private final AlarmPanels panels;
    private final Visitor visitor;

    RefusedActs(TriageLists lists, AlarmPanels panels, Visitor visitor) {
        this.lists = lists;
        this.panels = panels;
        this.visitor = visitor;
    }

    Response page(long id, ActForm form, InputRejected e) {
        Reader reader = Reader.of(visitor.person());
        AlarmPanel panel = panels.panel(reader, id).orElseThrow(NotFoundException::new);
        Desk desk = new Desk(lists.list(reader, id), panel, true, form, new Faults(e.faults()));
        return Response.status(UNPROCESSABLE)
                .entity(TriagePages.Templates.triage(desk))
                .build();
    }
}
