/* Every check value on the controller's processor: prints how many agree bit for bit. The cases are compiled in. */
int values_main(void);

int main(void) { return values_main(); }
