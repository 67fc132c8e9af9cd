"""The command `halfangle`.

What it knows of operations comes from `generated/commands/`, a file a topic, so that no model and
no HTTP library is loaded for a call:

    root        the command, its topics and what each exit status means
    topics      a command for each operation, made from the contract's data
    contract    that data, read when it is asked for
    words       a request out of options, words and a file
    asking      the call itself
    status      what each exit status means, what a refusal says
    answers     an answer as a table, as JSON, or values of it
    picks       these values, by the rules of the service's own
    tables      its values as rows and columns
    figures     its numbers with their units
    helping     the help of an operation
    completion  scripts for the shells
    files       sheet, fill
    others      call, plan, demo, operations, glossary, completion
    screen      streams that lack colour or characters
"""

from halfangle_client.cli.root import main

__all__ = ["main"]
