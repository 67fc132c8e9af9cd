"""The pages for a person: reference, one page an operation, and a form to try each."""
