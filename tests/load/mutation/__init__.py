"""What a mutation run needs: mutants, the tests that execute a line, one process a mutant."""
