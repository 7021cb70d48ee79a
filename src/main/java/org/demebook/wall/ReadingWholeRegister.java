package org.demebook.wall;

import jakarta.annotation.Priority;
import jakarta.inject.Inject;
import jakarta.interceptor.AroundInvoke;
import jakarta.interceptor.Interceptor;
import jakarta.interceptor.InvocationContext;

/** Within the transaction that its method opens or joins. */
@WholeRegister
@Interceptor
@Priority(Interceptor.Priority.LIBRARY_BEFORE)
class ReadingWholeRegister {
    @Inject
    Wall wall;

    @AroundInvoke
    Object read(InvocationContext method) throws Exception {
        return wall.whole(method::proceed);
    }
}
