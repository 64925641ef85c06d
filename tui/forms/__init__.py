"""Form widgets: fields with their sentences, choices, tables of items.  They know no page."""
