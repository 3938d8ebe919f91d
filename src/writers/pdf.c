/* PDF through cairo: same document, same bytes. */
#include "sawbill/writers.h"

#include "writers/glyphs.h"
#include "writers/pages.h"
#include "writers/paper_file.h"

#include <cairo-pdf.h>

/* The date is the document's, never today's; a document without one was made when PDF was. */
static void describe(sb_run *run, cairo_surface_t *surface, const sb_document *document) {
    sb_date date = document->date.year ? document->date : (sb_date){1993, 6, 15};
    const char *day = sb_pool_print(run->pool, "%04d-%02d-%02dT00:00:00Z", date.year, date.month, date.day);
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, clean_text(run, document->title));
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_AUTHOR, clean_text(run, document->author));
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR, "sawbill");
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, day);
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_MOD_DATE, day);
}

bool sb_write_pdf(sb_run *run, const sb_document *document, const char *path) {
    const type_case *type = sb_document_sound(run, document) ? type_open(run) : NULL;
    paper_file *file = type ? paper_file_open(run, path) : NULL;
    if (!file)
        return false;
    ink_pages pages = pages_of(run, type, document);
    cairo_surface_t *surface = cairo_pdf_surface_create_for_stream(paper_file_take, file, 595, 842);
    describe(run, surface, document);
    cairo_t *cairo = cairo_create(surface);
    for (size_t i = 0; i < pages.count; i++) {
        cairo_pdf_surface_set_size(surface, pages.items[i].width, pages.items[i].height);
        ink_draw(cairo, &pages.items[i]);
        cairo_show_page(cairo);
    }
    cairo_destroy(cairo);
    return paper_file_close(run, file, surface);
}
