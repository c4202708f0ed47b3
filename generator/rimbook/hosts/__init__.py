"""Who carries the pages: MkDocs, or plain files."""
